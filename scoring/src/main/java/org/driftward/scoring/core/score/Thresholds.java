package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.scoring.core.Reading;
import org.jspecify.annotations.Nullable;

/**
 * Where a value, going on in its direction, would next earn more points or a total would next reach
 * another class of risk. Taken from the leading score that applies. Immutable, thread-safe.
 */
public final class Thresholds {

  private final Map<String, List<Threshold>> rows = new HashMap<>();
  private final Map<String, List<Double>> risks = new HashMap<>();

  /** One row of one score, as a threshold of the finding it reads. */
  private record Threshold(Applicability applicability, Row row, Source source) {}

  /**
   * The thresholds nearest to a value.
   *
   * @param above or null where going up costs nothing
   * @param below or null where going down costs nothing
   */
  public record Around(@Nullable Double above, @Nullable Double below) {
    private static final Around NOTHING = new Around(null, null);

    /** The one in this direction. */
    public @Nullable Double next(boolean up) {
      return up ? above : below;
    }
  }

  public Thresholds(ScoreBook book) {
    for (var definition : book.definitions()) {
      for (var row : definition.rows()) {
        if (row.input().measure() instanceof Recorded recorded && !row.input().coded()) {
          rows.computeIfAbsent(recorded.source().finding(), code -> new ArrayList<>())
              .add(new Threshold(definition.applicability(), row, recorded.source()));
        }
      }
      var lows = risks.computeIfAbsent(definition.id(), id -> new ArrayList<>());
      for (var risk : definition.risks()) {
        var low = risk.total().low();
        if (low != null) {
          lows.add(low.doubleValue());
        }
      }
      lows.sort(null);
    }
  }

  /** The thresholds around a finding's value, for this patient. */
  public Around around(Reading reading, Subject subject) {
    for (var threshold : rows.getOrDefault(reading.code(), List.of())) {
      if (threshold.applicability().covers(subject) && threshold.row().serves(subject)) {
        var number = threshold.source().number(reading);
        return number == null ? Around.NOTHING : around(threshold.row(), number);
      }
    }
    return Around.NOTHING;
  }

  /** The classes of risk above and below a total. */
  public Around around(String score, BigDecimal total) {
    double value = total.doubleValue();
    Double above = null;
    Double below = null;
    for (double low : risks.getOrDefault(score, List.of())) {
      if (low <= value) {
        below = low;
      } else if (above == null) {
        above = low;
      }
    }
    return new Around(above, below);
  }

  private static Around around(Row row, BigDecimal number) {
    var resolution = row.input().resolution();
    long steps = resolution.steps(number);
    Long above = null;
    Long below = null;
    for (var band : row.bands()) {
      boolean nearestAbove = band.from() > steps && (above == null || band.from() < above);
      boolean nearestBelow = band.upto() < steps && (below == null || band.upto() > below);
      if ((nearestAbove || nearestBelow) && band.points() > points(row, steps, band)) {
        above = nearestAbove ? Long.valueOf(band.from()) : above;
        below = nearestBelow ? Long.valueOf(band.upto()) : below;
      }
    }
    return new Around(
        above == null ? null : resolution.value(above).doubleValue(),
        below == null ? null : resolution.value(below).doubleValue());
  }

  /**
   * The fewest points the value may earn now, where the other inputs are as {@code there} asks: on
   * oxygen 94 costs less than 95, though on air 95 costs nothing.
   */
  private static int points(Row row, long steps, Band there) {
    int fewest = Integer.MAX_VALUE;
    for (var band : row.bands()) {
      if (band.holds(steps) && band.agrees(there)) {
        fewest = Math.min(fewest, band.points());
      }
    }
    return fewest;
  }
}
