package org.driftward.scoring.core.change;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.driftward.ingest.contract.FindingValue;
import org.jspecify.annotations.Nullable;

/**
 * What the catalogue says about one finding, made ready for arithmetic: every value becomes a
 * number, a word the position among its options.
 */
final class SeriesRule {

  /** Differences closer than this are equal: 5.1 less 4.1 is a millimetre. */
  private static final double HAIR = 1e-9;

  /** A score's total: more is worse; no baseline, and no change that counts by itself. */
  static final SeriesRule SCORE =
      new SeriesRule(
          new CatalogueEntry(
              "score",
              "Score",
              "derived",
              Kind.QUANTITY,
              ChangeDetector.SCORE_UNIT,
              List.of(),
              false,
              null,
              null,
              null,
              List.of(),
              List.of(),
              Worse.HIGHER,
              null,
              null,
              null,
              "the score definition"));

  private final CatalogueEntry entry;
  private final double change;
  private final double noise;
  private final double low;
  private final double high;
  private final boolean numeric;
  private final boolean changes;
  private final Set<Integer> normal = new HashSet<>();

  SeriesRule(CatalogueEntry entry) {
    this.entry = entry;
    this.change = entry.change() == null ? Double.NaN : entry.change().doubleValue();
    this.noise = entry.noise() == null ? Double.NaN : entry.noise().doubleValue();
    if (noise <= 0 || change <= 0) {
      throw new IllegalArgumentException(entry.code() + ": noise and change must be positive");
    }
    var expected = entry.expected();
    this.low = expected == null ? Double.NaN : expected.low().doubleValue();
    this.high = expected == null ? Double.NaN : expected.high().doubleValue();
    this.numeric = entry.kind() == Kind.QUANTITY || entry.kind() == Kind.GRADE;
    this.changes = !Double.isNaN(change) && entry.group() != null && entry.worse() != Worse.NONE;
    entry.normal().forEach(option -> normal.add(entry.options().indexOf(option)));
  }

  String name() {
    return entry.name();
  }

  @Nullable Group group() {
    return entry.group();
  }

  @Nullable String unit() {
    return entry.unit();
  }

  List<String> options() {
    return entry.options();
  }

  /** Whether values are numbers that time may bend: the series has a trend. */
  boolean numeric() {
    return numeric;
  }

  /** Whether the series has a baseline and drifts from it. */
  boolean drifts() {
    return numeric && !Double.isNaN(noise);
  }

  /** Whether some change of the series counts by itself. */
  boolean changes() {
    return changes;
  }

  /**
   * The value as a number; NaN for one that this entry does not know, which is no part of the
   * series: it stays in the history, and cannot be compared.
   */
  double level(FindingValue value) {
    if (value instanceof FindingValue.Quantity quantity && quantity.unit().equals(entry.unit())) {
      return quantity.value().doubleValue();
    }
    if (value instanceof FindingValue.Grade grade && entry.kind() == Kind.GRADE) {
      return grade.grade();
    }
    if (value instanceof FindingValue.Coded coded) {
      int index = entry.options().indexOf(coded.code());
      return index < 0 ? Double.NaN : index;
    }
    return Double.NaN;
  }

  /**
   * The usual one of several values: of quantities the median, of steps the middle one, the better
   * of two; of words without order the most frequent.
   */
  double usual(double[] values) {
    if (entry.kind() == Kind.QUANTITY) {
      return Robust.median(values);
    }
    if (entry.kind() == Kind.CODED && !ordered()) {
      return Robust.mode(values);
    }
    return entry.worse() == Worse.LOWER ? Robust.highMedian(values) : Robust.lowMedian(values);
  }

  /** The spread of several values about their centre, not below the measuring noise. */
  double spread(double[] values, double centre) {
    return Math.max(drifts() ? noise : 0, Robust.spread(values, centre));
  }

  /** Whether {@code value} is worse than the usual one by as much as counts. */
  boolean worsened(double usual, double value) {
    if (!changes) {
      return false;
    }
    if (entry.kind() == Kind.CODED && !ordered()) {
      return value != usual && !normal.contains((int) value);
    }
    double distance = value - usual;
    return Math.abs(distance) >= change - HAIR && worse(distance, usual, value);
  }

  /**
   * Whether going from {@code centre} by {@code direction} to {@code value} is for the worse. Where
   * either way may be, coming from outside the expected range towards it, and no further than into
   * it, is recovery.
   */
  boolean worse(double direction, double centre, double value) {
    return switch (entry.worse()) {
      case HIGHER -> direction > 0;
      case LOWER -> direction < 0;
      case EITHER ->
          direction > 0 ? !(centre < low && value <= high) : !(centre > high && value >= low);
      case NONE -> false;
    };
  }

  /** Whether a well person's value may be this. */
  boolean expected(double value) {
    return low <= value && value <= high;
  }

  /** Whether the expected range is known and {@code centre} lies outside. */
  boolean unwell(double centre) {
    return centre < low || centre > high;
  }

  private boolean ordered() {
    return entry.worse() == Worse.HIGHER || entry.worse() == Worse.LOWER;
  }
}
