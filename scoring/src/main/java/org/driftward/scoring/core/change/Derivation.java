package org.driftward.scoring.core.change;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.DerivedFinding;
import org.jspecify.annotations.Nullable;

/** Computes derived findings from the readings of one assessment, in exact decimals. */
final class Derivation {

  private Derivation() {}

  /** One reading for each place on the body where both values were taken. */
  static List<Reading> of(DerivedFinding finding, Map<FindingKey, Reading> together) {
    var derived = new ArrayList<Reading>();
    for (var first : together.values()) {
      var second = together.get(partner(finding, first.key()));
      var value = second == null ? null : value(finding, first, second);
      if (value != null) {
        var key = new FindingKey(finding.code(), first.key().site(), side(finding, first));
        derived.add(
            new Reading(
                key, new Quantity(value, finding.unit()), first.takenAt(), first.assessment()));
      }
    }
    return derived;
  }

  /** Which value the one under {@code key} is compared with; null if it does not begin a pair. */
  private static @Nullable FindingKey partner(DerivedFinding finding, FindingKey key) {
    if (!key.code().equals(finding.of().get(0))) {
      return null;
    }
    return switch (finding.how()) {
      case SIDES ->
          key.side() == Side.LEFT ? new FindingKey(key.code(), key.site(), Side.RIGHT) : null;
      case DEFICIT -> new FindingKey(finding.of().get(1), key.site(), key.side());
    };
  }

  private static @Nullable Side side(DerivedFinding finding, Reading first) {
    return switch (finding.how()) {
      case SIDES -> null;
      case DEFICIT -> first.key().side();
    };
  }

  private static @Nullable BigDecimal value(DerivedFinding finding, Reading first, Reading second) {
    if (!(first.value() instanceof Quantity a && second.value() instanceof Quantity b)) {
      return null;
    }
    if (!a.unit().equals(finding.unit()) || !b.unit().equals(finding.unit())) {
      return null;
    }
    var difference = a.value().subtract(b.value());
    return switch (finding.how()) {
      case SIDES -> difference.abs();
      case DEFICIT -> difference.signum() < 0 ? null : difference;
    };
  }
}
