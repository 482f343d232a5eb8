package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.core.Reading;
import org.jspecify.annotations.Nullable;

/** The finding as it was recorded. */
public record Recorded(Source source) implements Measure {

  @Override
  public @Nullable Found find(Input input, Sight sight) {
    var reading = sight.fresh(source);
    if (reading == null) {
      return null;
    }
    return input.coded() ? word(input, reading) : number(input, reading);
  }

  private @Nullable Found number(Input input, Reading reading) {
    BigDecimal number = source.number(reading);
    if (number == null) {
      return null;
    }
    long steps = input.resolution().steps(number);
    return new Found(steps, Scalar.of(number), source.unit(), reading.takenAt(), null);
  }

  private static @Nullable Found word(Input input, Reading reading) {
    if (!(reading.value() instanceof FindingValue.Coded coded)) {
      return null;
    }
    int place = input.words().indexOf(coded.code());
    return place < 0 ? null : new Found(place, input.shown(place), null, reading.takenAt(), null);
  }

  @Override
  public void name(Sight sight, Collection<String> missing) {
    missing.add(source.finding());
  }

  @Override
  public List<Source> sources() {
    return List.of(source);
  }
}
