package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.scoring.core.Reading;
import org.jspecify.annotations.Nullable;

/**
 * A total and the stretch of time it was collected in.
 *
 * @param from when collecting began
 * @param until when the last volume was read
 */
record Collected(BigDecimal total, Instant from, Instant until) {

  private static final BigDecimal SECONDS_PER_HOUR = BigDecimal.valueOf(3600);

  /** Entries are timed by hand; a gap or overlap up to this is none. Engineering choice. */
  private static final Duration TOLERANCE = Duration.ofMinutes(15);

  /**
   * Adds up volumes backwards from the last one until they cover {@code over}. A volume was
   * collected in the hours recorded with it, else since the volume before it.
   *
   * @param volumes oldest first
   * @param hours recorded with some of them, at the same time
   * @param slack how much longer than {@code over} the stretch may be
   * @return null if the volumes leave a gap, overlap, or do not reach back far enough
   */
  static @Nullable Collected backwards(
      Output output, List<Reading> volumes, List<Reading> hours, Duration slack) {
    if (volumes.isEmpty()) {
      return null;
    }
    var until = volumes.get(volumes.size() - 1).takenAt();
    var enough = until.minus(output.over());
    var from = until;
    var total = BigDecimal.ZERO;
    for (int i = volumes.size() - 1; i >= 0 && from.isAfter(enough); i--) {
      var end = volumes.get(i).takenAt();
      var before = i == 0 ? null : volumes.get(i - 1).takenAt();
      var start = start(output, end, before, hours);
      var number = output.volume().number(volumes.get(i));
      if (number == null || start == null || end.plus(TOLERANCE).isBefore(from)) {
        return null;
      }
      if (before != null && start.plus(TOLERANCE).isBefore(before)) {
        return null;
      }
      total = total.add(number);
      from = start;
    }
    return from.isAfter(enough) || from.isBefore(enough.minus(slack))
        ? null
        : new Collected(total, from, until);
  }

  private static @Nullable Instant start(
      Output output, Instant end, @Nullable Instant before, List<Reading> hours) {
    var period = output.period();
    if (period != null) {
      for (var reading : hours) {
        var number = reading.takenAt().equals(end) ? period.number(reading) : null;
        if (number != null) {
          return end.minusSeconds(number.multiply(SECONDS_PER_HOUR).longValue());
        }
      }
    }
    return before;
  }

  /** How long it was collected. */
  BigDecimal seconds() {
    return BigDecimal.valueOf(Duration.between(from, until).toSeconds());
  }
}
