package org.driftward.dashboard.screen;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

/**
 * A time that the page keeps telling in words as the ward's clock goes on: the server writes the
 * words once, a script writes the same words again every second.
 *
 * @param at the moment it counts to or from
 * @param before words up to {@code at}, for example {@code due in}
 * @param after words past {@code at}, for example {@code overdue by}
 * @param deadline whether being past {@code at} is late
 */
public record Countdown(Instant at, String before, String after, boolean deadline) {

  public Countdown {
    Objects.requireNonNull(at, "at");
    Objects.requireNonNull(before, "before");
    Objects.requireNonNull(after, "after");
  }

  /** Counts down to a deadline, then says how late it is. */
  public static Countdown due(Instant at, String before, String after) {
    return new Countdown(at, before, after, true);
  }

  /** Counts up. */
  public static Countdown since(Instant at, String words) {
    return new Countdown(at, words, words, false);
  }

  /** At the very moment it is not late yet. */
  public boolean late(Instant now) {
    return deadline && now.isAfter(at);
  }

  public String words(Instant now) {
    String words = (now.isAfter(at) ? after : before) + " ";
    return (words + Wording.span(Duration.between(now, at))).strip();
  }
}
