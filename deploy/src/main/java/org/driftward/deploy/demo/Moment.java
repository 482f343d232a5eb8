package org.driftward.deploy.demo;

import java.time.Duration;

/**
 * A known point of a course.
 *
 * @param at since the demo's live part began; negative before it
 * @param every how often sets are taken from here on
 * @param vitals the truth at this moment
 */
record Moment(Duration at, Duration every, Vitals vitals) {

  /**
   * Reads one line of a course: time, interval, respiration, saturation, oxygen, pressure, pulse,
   * consciousness, temperature.
   *
   * @throws IllegalArgumentException naming the line
   */
  static Moment parse(String line) {
    var cells = line.strip().split("\\s+", -1);
    if (cells.length != 9) {
      throw new IllegalArgumentException("a moment has nine cells: " + line);
    }
    var pressure = cells[5].split("/", -1);
    return new Moment(
        time(cells[0]),
        time(cells[1]),
        new Vitals(
            Double.parseDouble(cells[2]),
            Double.parseDouble(cells[3]),
            cells[4].equals("air") ? 0 : Double.parseDouble(cells[4]),
            Double.parseDouble(pressure[0]),
            Double.parseDouble(pressure[1]),
            Double.parseDouble(cells[6]),
            cells[7],
            Double.parseDouble(cells[8])));
  }

  /** {@code -36:00} is thirty-six hours before the live part. */
  private static Duration time(String text) {
    boolean before = text.startsWith("-");
    var parts = text.substring(before ? 1 : 0).split(":", -1);
    var time = Duration.ofHours(Long.parseLong(parts[0])).plusMinutes(Long.parseLong(parts[1]));
    return before ? time.negated() : time;
  }
}
