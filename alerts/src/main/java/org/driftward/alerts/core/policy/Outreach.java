package org.driftward.alerts.core.policy;

import java.time.Duration;
import java.util.List;
import java.util.Objects;

/**
 * How alarms reach people beyond the board.
 *
 * @param detail how much a message may say
 * @param attempts at most so many for each delivery
 * @param firstPause before the second attempt; doubles from then on
 * @param longestPause the bound of that
 * @param timeout how long one attempt may take
 */
public record Outreach(
    Detail detail,
    int attempts,
    Duration firstPause,
    Duration longestPause,
    Duration timeout,
    List<Recipient> recipients) {

  /** For a policy without the section: nobody is told but by the board. */
  public static final Outreach NOBODY =
      new Outreach(
          Detail.MINIMAL,
          1,
          Duration.ofSeconds(5),
          Duration.ofMinutes(1),
          Duration.ofSeconds(10),
          List.of());

  public Outreach {
    Objects.requireNonNull(detail, "detail");
    if (attempts < 1) {
      throw new IllegalArgumentException("outreach: " + attempts + " attempts");
    }
    Durations.positive("first-pause", firstPause);
    Durations.positive("longest-pause", longestPause);
    Durations.positive("timeout", timeout);
    recipients = recipients == null ? List.of() : List.copyOf(recipients);
  }

  /** The ward's own lines, or else those for every ward. */
  public List<Recipient> recipients(Audience audience, String ward) {
    var all = recipients.stream().filter(one -> one.audience() == audience).toList();
    var own = all.stream().filter(one -> one.standsFor(ward)).toList();
    return own.isEmpty() ? all.stream().filter(one -> one.ward() == null).toList() : own;
  }
}
