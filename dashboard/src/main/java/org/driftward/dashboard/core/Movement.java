package org.driftward.dashboard.core;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Word;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.jspecify.annotations.Nullable;

/**
 * Which way the leading score goes.
 *
 * @param delta newest lower bound less the one before, or null with fewer than two sets
 * @param trending whether the direction comes from a significant trend over the window, not only
 *     from the last step
 */
public record Movement(Direction direction, @Nullable BigDecimal delta, boolean trending) {

  /** In words; a rising score is a patient getting worse. */
  public enum Direction implements Word {
    RISING,
    FALLING,
    STEADY,
    /** Too few sets, or bounds that overlap because inputs are missing. */
    UNKNOWN
  }

  public static final Movement UNKNOWN = new Movement(Direction.UNKNOWN, null, false);

  /**
   * A step of one point lies within what two people measuring the same patient differ by; two count
   * as sliding even before the trend is significant. Engineering choice, no published source.
   */
  static final BigDecimal SLIDING_STEP = BigDecimal.valueOf(2);

  public Movement {
    Objects.requireNonNull(direction, "direction");
  }

  /** Whether the patient is getting worse by more than the scatter of the score. */
  public boolean slides() {
    return direction == Direction.RISING
        && (trending || (delta != null && delta.compareTo(SLIDING_STEP) >= 0));
  }

  /**
   * A significant trend of the leading score decides; without one, the last step does, and only if
   * the bounds of the two sets do not overlap: a missing input must not look like recovery.
   *
   * @param recent totals of the leading score, oldest first, the snapshot's own the last
   */
  public static Movement of(@Nullable Snapshot snapshot, List<Total> recent) {
    var score = snapshot == null ? null : snapshot.leading();
    if (snapshot == null || score == null) {
      return UNKNOWN;
    }
    var delta = delta(recent);
    for (Trend trend : snapshot.trend()) {
      if (trend.code().equals(score.id()) && trend.significant() && trend.perHour() != 0) {
        return new Movement(
            trend.perHour() > 0 ? Direction.RISING : Direction.FALLING, delta, true);
      }
    }
    return new Movement(lastStep(recent), delta, false);
  }

  private static @Nullable BigDecimal delta(List<Total> recent) {
    int last = recent.size() - 1;
    return last < 1 ? null : recent.get(last).low().subtract(recent.get(last - 1).low());
  }

  private static Direction lastStep(List<Total> recent) {
    int last = recent.size() - 1;
    if (last < 1) {
      return Direction.UNKNOWN;
    }
    var before = recent.get(last - 1);
    var now = recent.get(last);
    if (now.low().compareTo(before.high()) > 0) {
      return Direction.RISING;
    }
    if (now.high().compareTo(before.low()) < 0) {
      return Direction.FALLING;
    }
    boolean settled =
        now.low().compareTo(now.high()) == 0 && before.low().compareTo(before.high()) == 0;
    return settled ? Direction.STEADY : Direction.UNKNOWN;
  }
}
