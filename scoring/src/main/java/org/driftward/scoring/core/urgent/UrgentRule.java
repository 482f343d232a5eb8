package org.driftward.scoring.core.urgent;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.Set;
import org.driftward.ingest.contract.CallNow;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.scoring.contract.Plain;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.UrgentFinding;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.UrgentValue;
import org.driftward.scoring.core.score.Subject;
import org.jspecify.annotations.Nullable;

/**
 * One rule on one finding.
 *
 * @param step what counts as one step further, in the finding's unit
 */
record UrgentRule(
    CatalogueEntry entry,
    CallNow when,
    Set<String> only,
    Set<String> not,
    @Nullable Integer scale,
    double step) {

  /** As for the scores: an unknown age is taken to be an adult's. Engineering choice. */
  private static final int AN_ADULT = 40;

  static UrgentRule of(CatalogueEntry entry, CallNow when) {
    return new UrgentRule(entry, when, Set.of(), Set.of(), null, step(entry));
  }

  static UrgentRule of(CatalogueEntry entry, UrgentValue value) {
    return new UrgentRule(
        entry, value.when(), value.only(), value.not(), value.scale(), step(entry));
  }

  /** What the reading meets, or null where it does not. */
  @Nullable UrgentFinding metBy(Reading reading, Subject subject) {
    if (!isFor(subject)) {
      return null;
    }
    var value = reading.value();
    if (value instanceof Coded coded && when.is().contains(coded.code())) {
      return found(reading, null, wordsBeyond(coded.code()));
    }
    if (value instanceof Quantity quantity
        && quantity.unit().equals(entry.unit())
        && when.holds(quantity.value())) {
      return found(reading, quantity.unit(), when.beyond(quantity.value()) / step);
    }
    if (value instanceof Grade grade) {
      var number = BigDecimal.valueOf(grade.grade());
      return when.holds(number) ? found(reading, null, when.beyond(number) / step) : null;
    }
    return null;
  }

  private boolean isFor(Subject subject) {
    var years = subject.ageYears();
    return when.isFor(years == null ? AN_ADULT : years)
        && (scale == null || scale == subject.oxygenScale())
        && (only.isEmpty() || !Collections.disjoint(only, subject.populations()))
        && Collections.disjoint(not, subject.populations());
  }

  /** Options stand from best to worst: how many steps past the first that calls. */
  private double wordsBeyond(String word) {
    int first = when.is().stream().mapToInt(entry.options()::indexOf).min().orElseThrow();
    return entry.options().indexOf(word) - first;
  }

  private UrgentFinding found(Reading reading, @Nullable String unit, double beyond) {
    var key = reading.key();
    var value = Scalar.of(reading.value());
    return new UrgentFinding(
        key.code(),
        key.site(),
        key.side(),
        value,
        unit,
        reading.takenAt(),
        when.level(),
        beyond,
        words(reading, value, unit),
        when.source());
  }

  private String words(Reading reading, Scalar value, @Nullable String unit) {
    var key = reading.key();
    return entry.name()
        + (key.site() == null ? "" : " " + key.site().replace('-', ' '))
        + (key.side() == null ? "" : " " + key.side().word())
        + " "
        + value.plain().replace('-', ' ')
        + Plain.unit(unit)
        + (when.is().isEmpty() ? " (" + when.words() + ")" : "");
  }

  private static double step(CatalogueEntry entry) {
    var step = entry.change() != null ? entry.change() : entry.noise();
    return step == null || step.signum() <= 0 ? 1 : step.doubleValue();
  }
}
