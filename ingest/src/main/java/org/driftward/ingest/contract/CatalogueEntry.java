package org.driftward.ingest.contract;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One finding of the catalogue.
 *
 * @param code ours; stable
 * @param name plain English, sentence case
 * @param region the part of the examination it belongs to, for example {@code chest}
 * @param unit UCUM code; only for {@link Kind#QUANTITY}
 * @param sites body sites it may be taken at; empty where it has none
 * @param sided whether left and right are recorded apart
 * @param loinc LOINC code, where one was verified
 * @param accepted values outside are refused; only for quantities and grades
 * @param expected values of a well adult; the one-touch entry records these
 * @param options the allowed codes of {@link Kind#CODED}, from best to worst where {@code worse} is
 *     {@link Worse#HIGHER}; empty otherwise
 * @param normal the expected option or options; only for {@link Kind#CODED}
 * @param worse which way is worse
 * @param change the smallest change in the worse direction that counts as a changed finding, in the
 *     entry's unit or in steps of its options; null where no change counts by itself
 * @param noise the measurement noise: spread of repeated readings of an unchanged patient, in the
 *     entry's unit; the floor of the baseline's spread; null where no baseline is kept
 * @param group what a change of it says about the patient; null where nothing
 * @param source published source of the ranges and rules, or {@code common practice, no source}
 * @param scale what the grades mean, grade by grade from the lowest; empty where the number says it
 * @param hint how to examine, in one sentence; null where that is plain
 * @param formula how {@link Derivations} computes it from others, in words; null if it never does.
 *     A recorded value counts before a computed one
 * @param callNow values that call somebody by themselves, beside every score
 */
public record CatalogueEntry(
    String code,
    String name,
    String region,
    Kind kind,
    @Nullable String unit,
    List<String> sites,
    boolean sided,
    @Nullable String loinc,
    @Nullable Range accepted,
    @Nullable Range expected,
    List<String> options,
    List<String> normal,
    Worse worse,
    @Nullable BigDecimal change,
    @Nullable BigDecimal noise,
    @Nullable Group group,
    String source,
    SortedMap<Integer, String> scale,
    @Nullable String hint,
    @Nullable String formula,
    List<CallNow> callNow) {

  /** What kind of value the finding has. */
  public enum Kind implements Word {
    QUANTITY,
    GRADE,
    CODED,
    TEXT
  }

  /** Which direction is worse for the patient. */
  public enum Worse implements Word {
    HIGHER,
    LOWER,
    EITHER,
    NONE
  }

  /** Body functions by which changed findings are grouped. */
  public enum Group implements Word {
    BREATHING,
    CIRCULATION,
    BRAIN,
    LIMB_CIRCULATION,
    ABDOMEN,
    KIDNEY
  }

  /** Both ends included. */
  public record Range(BigDecimal low, BigDecimal high) {
    public Range {
      if (low.compareTo(high) > 0) {
        throw new IllegalArgumentException("range from " + low + " to " + high + " is empty");
      }
    }

    public boolean holds(BigDecimal value) {
      return low.compareTo(value) <= 0 && value.compareTo(high) <= 0;
    }
  }

  public CatalogueEntry {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(region, "region");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(worse, "worse");
    Objects.requireNonNull(source, "source");
    sites = copy(sites);
    options = copy(options);
    normal = copy(normal);
    callNow = callNow == null ? List.of() : List.copyOf(callNow);
    scale =
        Collections.unmodifiableSortedMap(scale == null ? new TreeMap<>() : new TreeMap<>(scale));
    if ((kind == Kind.QUANTITY) != (unit != null)) {
      throw new IllegalArgumentException(code + ": a quantity, and only a quantity, has a unit");
    }
    if ((kind == Kind.CODED) == options.isEmpty()) {
      throw new IllegalArgumentException(code + ": a coded finding, and only one, has options");
    }
    if (!options.containsAll(normal)) {
      throw new IllegalArgumentException(code + ": normal " + normal + " is not among the options");
    }
    for (var rule : callNow) {
      if (kind == Kind.TEXT || (kind == Kind.CODED) == rule.is().isEmpty()) {
        throw new IllegalArgumentException(code + ": call-now does not fit its kind");
      }
      if (!options.containsAll(rule.is())) {
        throw new IllegalArgumentException(
            code + ": call-now " + rule.is() + " is not among the options");
      }
    }
    if ((kind == Kind.GRADE) && accepted == null) {
      throw new IllegalArgumentException(code + ": a grade needs the range of its scale");
    }
  }

  /** An entry that calls nobody by itself. */
  public CatalogueEntry(
      String code,
      String name,
      String region,
      Kind kind,
      @Nullable String unit,
      List<String> sites,
      boolean sided,
      @Nullable String loinc,
      @Nullable Range accepted,
      @Nullable Range expected,
      List<String> options,
      List<String> normal,
      Worse worse,
      @Nullable BigDecimal change,
      @Nullable BigDecimal noise,
      @Nullable Group group,
      String source,
      SortedMap<Integer, String> scale,
      @Nullable String hint,
      @Nullable String formula) {
    this(
        code, name, region, kind, unit, sites, sided, loinc, accepted, expected, options, normal,
        worse, change, noise, group, source, scale, hint, formula, List.of());
  }

  /** An entry without scale, hint and formula. */
  public CatalogueEntry(
      String code,
      String name,
      String region,
      Kind kind,
      @Nullable String unit,
      List<String> sites,
      boolean sided,
      @Nullable String loinc,
      @Nullable Range accepted,
      @Nullable Range expected,
      List<String> options,
      List<String> normal,
      Worse worse,
      @Nullable BigDecimal change,
      @Nullable BigDecimal noise,
      @Nullable Group group,
      String source) {
    this(
        code,
        name,
        region,
        kind,
        unit,
        sites,
        sided,
        loinc,
        accepted,
        expected,
        options,
        normal,
        worse,
        change,
        noise,
        group,
        source,
        new TreeMap<>(),
        null,
        null);
  }

  /**
   * The one value that entry by exception records; empty where a well adult may have several, or
   * where the value must be measured.
   */
  public Optional<FindingValue> usual() {
    if (kind == Kind.CODED && normal.size() == 1) {
      return Optional.of(new FindingValue.Coded(normal.get(0)));
    }
    if (kind == Kind.GRADE && expected != null && expected.low().compareTo(expected.high()) == 0) {
      return Optional.of(new FindingValue.Grade(expected.low().intValueExact()));
    }
    return Optional.empty();
  }

  /** A file leaves an empty list out. */
  private static List<String> copy(@Nullable List<String> list) {
    return list == null ? List.of() : List.copyOf(list);
  }
}
