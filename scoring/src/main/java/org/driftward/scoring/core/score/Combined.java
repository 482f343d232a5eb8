package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * A weighted sum of findings over a divisor, from the values as recorded; rounded once, at the end.
 * Mean arterial pressure is (systolic + 2 x diastolic) / 3.
 */
public record Combined(List<Term> terms, BigDecimal divisor, String formula) implements Measure {

  /** One finding and its weight. */
  public record Term(Source source, BigDecimal weight) {}

  public Combined {
    terms = List.copyOf(terms);
    if (terms.isEmpty()) {
      throw new IllegalArgumentException("a sum of nothing");
    }
    if (divisor.signum() <= 0) {
      throw new IllegalArgumentException("divided by " + divisor);
    }
  }

  @Override
  public @Nullable Found find(Input input, Sight sight) {
    var sum = BigDecimal.ZERO;
    Instant oldest = null;
    for (var term : terms) {
      var reading = sight.fresh(term.source);
      var number = reading == null ? null : term.source.number(reading);
      if (reading == null || number == null) {
        return null;
      }
      sum = sum.add(term.weight.multiply(number));
      if (oldest == null || reading.takenAt().isBefore(oldest)) {
        oldest = reading.takenAt();
      }
    }
    long steps = input.resolution().steps(sum, divisor);
    var shown = Scalar.of(input.resolution().value(steps));
    return oldest == null ? null : new Found(steps, shown, input.unit(), oldest, formula);
  }

  @Override
  public void name(Sight sight, Collection<String> missing) {
    for (var term : terms) {
      if (sight.number(term.source) == null) {
        missing.add(term.source.finding());
      }
    }
  }

  @Override
  public List<Source> sources() {
    return terms.stream().map(Term::source).toList();
  }
}
