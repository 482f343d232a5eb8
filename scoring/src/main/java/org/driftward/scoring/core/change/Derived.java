package org.driftward.scoring.core.change;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Derivations;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.RateFinding;
import org.jspecify.annotations.Nullable;

/**
 * Series computed from the findings of one assessment: those the catalogue has a formula and a
 * change rule for, as the difference of the pupils, and the policy's rates. A mean pressure says
 * nothing that the two pressures do not, and has no history of its own.
 */
final class Derived {

  private final Derivations derivations;
  private final List<RateFinding> rates;

  Derived(Catalogue catalogue, List<RateFinding> rates) {
    Set<String> kept =
        catalogue.entries().stream()
            .filter(entry -> entry.formula() != null && entry.change() != null)
            .map(entry -> entry.code())
            .collect(Collectors.toSet());
    this.derivations = Derivations.standard(kept);
    this.rates = rates;
  }

  /** Readings of the same assessment, in the order of catalogue and policy. */
  List<Reading> from(Collection<Reading> together) {
    if (together.isEmpty()) {
      return List.of();
    }
    var first = together.iterator().next();
    var findings = new ArrayList<Finding>(together.size());
    for (var reading : together) {
      findings.add(new Finding(reading.key(), reading.value()));
    }
    var derived = new ArrayList<Reading>();
    for (var one : derivations.from(findings).derived()) {
      derived.add(like(first, one.finding().key(), one.finding().value()));
    }
    for (var rate : rates) {
      var hours = quantity(together, rate.hours());
      var amount = quantity(together, rate.amount());
      if (amount != null && hours != null && hours.signum() > 0) {
        var value = new Quantity(amount.divide(hours, MathContext.DECIMAL64), rate.unit());
        derived.add(like(first, FindingKey.of(rate.code()), value));
      }
    }
    return derived;
  }

  private static @Nullable BigDecimal quantity(Collection<Reading> together, String code) {
    var key = FindingKey.of(code);
    for (var reading : together) {
      if (reading.key().equals(key)) {
        return reading.value() instanceof Quantity quantity ? quantity.value() : null;
      }
    }
    return null;
  }

  private static Reading like(Reading first, FindingKey key, FindingValue value) {
    return new Reading(key, value, first.takenAt(), first.assessment());
  }
}
