package org.driftward.deploy.bench;

import java.util.Locale;

/**
 * What one way of doing it cost.
 *
 * @param way in words
 * @param assessments that were counted
 * @param seconds of wall clock
 * @param clientSeconds of CPU in the process that does the work
 * @param serverSeconds of CPU in the broker or the database
 * @param bytes written to disk
 */
record Measured(
    String way,
    int encounters,
    long assessments,
    double seconds,
    double clientSeconds,
    double serverSeconds,
    long bytes) {

  static final String HEAD =
      """
      | way | encounters | assessments/s | CPU of the process, µs | CPU of broker or database, µs | bytes written |
      | --- | --- | --- | --- | --- | --- |
      """;

  double perSecond() {
    return assessments / seconds;
  }

  double clientMicros() {
    return clientSeconds * 1e6 / assessments;
  }

  double serverMicros() {
    return serverSeconds * 1e6 / assessments;
  }

  /** All but the first two cells are for one assessment. */
  String row() {
    return String.format(
        Locale.ROOT,
        "| %s | %,d | %,.0f | %.1f | %.1f | %,d |",
        way,
        encounters,
        perSecond(),
        clientMicros(),
        serverMicros(),
        bytes / assessments);
  }
}
