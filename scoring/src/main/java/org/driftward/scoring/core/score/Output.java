package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * What flowed out over the last hours, as a total or per kilogram and hour.
 *
 * <p>A recorded volume is what came since the volume recorded before it. So the record covers the
 * hours only if it begins with a volume at least that long before the last one; the rate is over
 * the time that the volumes really cover, which may be up to a third longer (engineering choice).
 *
 * @param volume recorded since the one before
 * @param over at least this long
 * @param weight in kg, for a rate per kilogram and hour; null for the total
 */
public record Output(Source volume, Duration over, @Nullable Source weight) implements Measure {

  private static final BigDecimal SECONDS_PER_HOUR = BigDecimal.valueOf(3600);

  public Output {
    if (over.isZero() || over.isNegative()) {
      throw new IllegalArgumentException("output over " + over);
    }
  }

  private record Covered(BigDecimal total, Instant from, Instant until) {}

  @Override
  public @Nullable Found find(Input input, Sight sight) {
    var covered = covered(sight);
    if (covered == null) {
      return null;
    }
    var words = "since " + covered.from;
    if (weight == null) {
      long steps = input.resolution().steps(covered.total);
      return new Found(steps, Scalar.of(covered.total), input.unit(), covered.until, words);
    }
    var kilograms = sight.number(weight);
    if (kilograms == null || kilograms.signum() <= 0) {
      return null;
    }
    var seconds = BigDecimal.valueOf(Duration.between(covered.from, covered.until).toSeconds());
    long steps =
        input
            .resolution()
            .steps(covered.total.multiply(SECONDS_PER_HOUR), kilograms.multiply(seconds));
    var shown = Scalar.of(input.resolution().value(steps));
    return new Found(steps, shown, input.unit(), covered.until, words + ", " + kilograms + " kg");
  }

  private @Nullable Covered covered(Sight sight) {
    var last = sight.fresh(volume);
    if (last == null) {
      return null;
    }
    var slack = slack(sight.serves(volume));
    var latestStart = last.takenAt().minus(over);
    var total = BigDecimal.ZERO;
    Instant from = null;
    for (var reading : sight.since(volume, latestStart.minus(slack))) {
      var number = volume.number(reading);
      if (number == null) {
        return null;
      }
      if (!reading.takenAt().isAfter(latestStart)) {
        from = reading.takenAt();
        total = BigDecimal.ZERO;
      } else {
        total = total.add(number);
      }
    }
    return from == null ? null : new Covered(total, from, last.takenAt());
  }

  /**
   * How much longer than asked the covered time may be: a third, so that no lull is averaged out.
   */
  private Duration slack(Duration serves) {
    var third = over.dividedBy(3);
    return serves.compareTo(third) < 0 ? serves : third;
  }

  @Override
  public void name(Sight sight, Collection<String> missing) {
    boolean uncovered = covered(sight) == null;
    if (uncovered) {
      missing.add(volume.finding());
    }
    if (weight != null && (!uncovered || sight.number(weight) == null)) {
      missing.add(weight.finding());
    }
  }

  @Override
  public List<Source> sources() {
    return weight == null ? List.of(volume) : List.of(volume, weight);
  }
}
