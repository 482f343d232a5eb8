package org.driftward.dashboard.screen;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.jspecify.annotations.Nullable;

/** A time of day as people type it, taken for the nearest one that makes sense. */
public final class TimeOfDay {

  private TimeOfDay() {}

  /**
   * The last time it was so late: {@code 23:50} entered at 00:10 was yesterday.
   *
   * @return null for an empty field
   * @throws DateTimeException if it is no time
   */
  public static @Nullable Instant past(@Nullable String typed, Instant now, ZoneId zone) {
    var there = at(typed, now, zone);
    return there == null
        ? null
        : (there.toInstant().isAfter(now) ? there.minusDays(1) : there).toInstant();
  }

  /** The next time it will be so late. */
  public static @Nullable Instant next(@Nullable String typed, Instant now, ZoneId zone) {
    var there = at(typed, now, zone);
    return there == null
        ? null
        : (there.toInstant().isAfter(now) ? there : there.plusDays(1)).toInstant();
  }

  private static @Nullable ZonedDateTime at(@Nullable String typed, Instant now, ZoneId zone) {
    return typed == null || typed.isBlank()
        ? null
        : now.atZone(zone).with(LocalTime.parse(typed.strip()));
  }
}
