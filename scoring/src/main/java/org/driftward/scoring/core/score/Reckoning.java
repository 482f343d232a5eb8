package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.Collectors;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.jspecify.annotations.Nullable;

/** One score of one patient at one moment, from the inputs that are known. */
final class Reckoning {

  private final Plan plan;
  private final ScoreDefinition definition;
  private final Found[] found;
  private final long[] steps;
  private final long known;
  private final Sight sight;

  private Reckoning(Plan plan, Sight sight) {
    this.plan = plan;
    this.definition = plan.definition();
    this.sight = sight;
    var inputs = definition.inputs();
    this.found = new Found[inputs.size()];
    this.steps = new long[inputs.size()];
    long bits = 0;
    for (int i = 0; i < found.length; i++) {
      var input = inputs.get(i);
      var one = input.measure().find(input, sight);
      if (one != null) {
        found[i] = one;
        steps[i] = one.steps();
        bits |= input.bit();
      }
    }
    this.known = bits;
  }

  /** The score, or null where the definition does not want it shown. */
  static @Nullable Score of(Plan plan, Subject subject, Sight sight) {
    var reckoning = new Reckoning(plan, sight);
    if (!reckoning.shown()) {
      return null;
    }
    return plan.definition().aggregate() instanceof Aggregate.Ratio ratio
        ? reckoning.ratio(ratio)
        : reckoning.points(plan.rows(subject));
  }

  private boolean shown() {
    return switch (definition.shown()) {
      case ALWAYS -> true;
      case BEGUN -> known != 0;
      case COMPLETE -> Long.bitCount(known) == found.length;
    };
  }

  private Score points(List<List<Row>> groups) {
    var inputs = explained(groups);
    boolean max = definition.aggregate() instanceof Aggregate.Max;
    var bounds = Bounds.of(groups, steps, known, plan.atoms(), max);
    var low = BigDecimal.valueOf(bounds.low());
    var high = BigDecimal.valueOf(bounds.high());
    var atLow = risk(low, bounds.singleLow());
    var atHigh = risk(high, bounds.singleHigh());
    boolean down = definition.lowerIsWorse();
    return score(
        low,
        high,
        down ? atHigh : atLow,
        down ? atLow : atHigh,
        down ? 0 : bounds.singleLow(),
        inputs);
  }

  private @Nullable Score ratio(Aggregate.Ratio ratio) {
    var values = new BigDecimal[found.length];
    var inputs = new ArrayList<ScoredInput>(found.length);
    for (int i = 0; i < found.length; i++) {
      values[i] = found[i].shown().number();
      var input = definition.inputs().get(i);
      inputs.add(scored(input, 0, "as measured", definition.title(), definition.source()));
    }
    var quotient = ratio.of(values);
    if (quotient == null) {
      return null;
    }
    var shown = quotient.setScale(ratio.digits(), RoundingMode.HALF_UP);
    var risk = risk(quotient, 0);
    return score(shown, shown, risk, risk, 0, inputs);
  }

  private Score score(
      BigDecimal low,
      BigDecimal high,
      String risk,
      String worst,
      int single,
      List<ScoredInput> inputs) {
    var missing = missing();
    return new Score(
        definition.id(),
        definition.title(),
        definition.version(),
        low,
        high,
        missing.isEmpty(),
        risk,
        worst,
        single,
        null,
        missing,
        inputs);
  }

  private String risk(BigDecimal total, int single) {
    var risks = definition.risks();
    for (int i = 0; i < risks.size(); i++) {
      if (risks.get(i).holds(total, single)) {
        return risks.get(i).id();
      }
    }
    throw new IllegalStateException(definition.id() + " has no risk class for " + total);
  }

  private List<String> missing() {
    if (Long.bitCount(known) == found.length) {
      return List.of();
    }
    var codes = new LinkedHashSet<String>();
    for (var input : definition.inputs()) {
      if ((known & input.bit()) == 0) {
        input.measure().name(sight, codes);
      }
    }
    return List.copyOf(codes);
  }

  private List<ScoredInput> explained(List<List<Row>> groups) {
    var inputs = new ArrayList<ScoredInput>(found.length);
    for (var group : groups) {
      for (var row : group) {
        if ((known & row.input().bit()) != 0) {
          inputs.add(explained(row));
        }
      }
    }
    return inputs;
  }

  private ScoredInput explained(Row row) {
    if ((row.inputs() & ~known) == 0) {
      var band = row.band(steps);
      return scored(row, band.points(), band.text());
    }
    var possible = row.possible(steps, known);
    int least = possible.stream().mapToInt(Band::points).min().orElseThrow();
    return scored(
        row, least, possible.stream().map(Band::text).collect(Collectors.joining(" or ")));
  }

  private ScoredInput scored(Row row, int points, String band) {
    return scored(row.input(), points, band, row.name(), row.source());
  }

  private ScoredInput scored(Input input, int points, String band, String row, String source) {
    var one = found[input.place()];
    return new ScoredInput(
        input.code(),
        one.shown(),
        one.unit(),
        one.takenAt(),
        points,
        band,
        row,
        source,
        one.derivedFrom());
  }
}
