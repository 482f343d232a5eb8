package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.core.Reading;
import org.jspecify.annotations.Nullable;

/**
 * What flowed out over the last hours, as a total or per kilogram and hour.
 *
 * <p>A recorded volume was collected in the hours recorded with it, else since the volume before
 * it. The record covers the hours asked for only if it reaches back that far without a gap; the
 * rate is over the time that the volumes really cover, which may be up to a third longer
 * (engineering choice).
 *
 * @param volume what was collected
 * @param over at least this long
 * @param period in hours, recorded beside a volume, or null where the finding has no such companion
 * @param weight in kg, for a rate per kilogram and hour; null for the total
 */
public record Output(Source volume, Duration over, @Nullable Source period, @Nullable Source weight)
    implements Measure {

  private static final BigDecimal SECONDS_PER_HOUR = BigDecimal.valueOf(3600);

  public Output {
    if (over.isZero() || over.isNegative()) {
      throw new IllegalArgumentException("output over " + over);
    }
  }

  @Override
  public @Nullable Found find(Input input, Sight sight) {
    var collected = collected(sight);
    if (collected == null) {
      return null;
    }
    var words = "since " + collected.from();
    if (weight == null) {
      long steps = input.resolution().steps(collected.total());
      var shown = Scalar.of(collected.total());
      return new Found(steps, shown, input.unit(), collected.until(), words);
    }
    var kilograms = sight.number(weight);
    if (kilograms == null || kilograms.signum() <= 0) {
      return null;
    }
    long steps =
        input
            .resolution()
            .steps(
                collected.total().multiply(SECONDS_PER_HOUR),
                kilograms.multiply(collected.seconds()));
    var shown = Scalar.of(input.resolution().value(steps));
    var because = words + ", " + kilograms.toPlainString() + " kg";
    return new Found(steps, shown, input.unit(), collected.until(), because);
  }

  private @Nullable Collected collected(Sight sight) {
    var last = sight.fresh(volume);
    if (last == null) {
      return null;
    }
    var slack = slack(sight.serves(volume));
    var from = last.takenAt().minus(over).minus(slack);
    var hours = period == null ? List.<Reading>of() : sight.since(period, from);
    return Collected.backwards(this, sight.since(volume, from), hours, slack);
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
    boolean uncovered = collected(sight) == null;
    if (uncovered) {
      missing.add(volume.finding());
    }
    if (weight != null && (!uncovered || sight.number(weight) == null)) {
      missing.add(weight.finding());
    }
  }

  /** The findings whose past it needs. */
  public List<Source> remembered() {
    return period == null ? List.of(volume) : List.of(volume, period);
  }

  @Override
  public List<Source> sources() {
    return weight == null
        ? remembered()
        : Stream.concat(remembered().stream(), Stream.of(weight)).toList();
  }
}
