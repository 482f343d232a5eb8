package org.driftward.dashboard.account;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

/**
 * How long somebody has to wait who keeps failing to sign in.
 *
 * @param free failures without any wait
 * @param first wait after one more; each further failure doubles it
 * @param longest the wait never grows above this
 * @param forget failures count as none this long after the last one
 */
public record Patience(int free, Duration first, Duration longest, Duration forget) {

  /**
   * What is known of one who fails.
   *
   * @param failures in a row
   * @param lockedUntil nothing is tried before this
   */
  public record Failures(int failures, Instant lastAt, Instant lockedUntil) {
    static final Failures NONE = new Failures(0, Instant.EPOCH, Instant.EPOCH);

    public Failures {
      Objects.requireNonNull(lastAt, "lastAt");
      Objects.requireNonNull(lockedUntil, "lockedUntil");
    }

    public boolean locked(Instant now) {
      return now.isBefore(lockedUntil);
    }
  }

  public Patience {
    if (free < 1) {
      throw new IllegalArgumentException("free failures " + free + " are below 1");
    }
    if (first.isNegative() || first.isZero() || longest.compareTo(first) < 0) {
      throw new IllegalArgumentException("wait of " + first + " up to " + longest);
    }
  }

  /** What is known after one more failure at {@code now}. */
  public Failures failed(Failures before, Instant now) {
    boolean forgotten = !now.isBefore(before.lastAt().plus(forget));
    int failures = (forgotten ? 0 : before.failures()) + 1;
    return new Failures(failures, now, now.plus(waitAfter(failures)));
  }

  private Duration waitAfter(int failures) {
    int over = failures - free;
    if (over < 0) {
      return Duration.ZERO;
    }
    var wait = first;
    for (int i = 0; i < over && wait.compareTo(longest) < 0; i++) {
      wait = wait.multipliedBy(2);
    }
    return wait.compareTo(longest) < 0 ? wait : longest;
  }
}
