package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.driftward.dashboard.core.Card;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.jspecify.annotations.Nullable;

/** What the care plan in force changes for this patient, one line each; every one with its end. */
final class PlanNotes {

  private PlanNotes() {}

  static List<String> of(@Nullable CarePlan plan, Findings findings, Instant now, ZoneId zone) {
    var notes = new ArrayList<String>();
    if (plan == null || !plan.inForce(now)) {
      return notes;
    }
    if (plan.hold() != null && now.isBefore(plan.hold().until())) {
      notes.add(
          "Escalation on hold until %s: %s"
              .formatted(Wording.time(plan.hold().until(), now, zone), plan.hold().reason()));
    }
    if (plan.ceiling() != null) {
      notes.add("Ceiling of care: " + plan.ceiling());
    }
    if (plan.oxygenScale() == 2) {
      notes.add("Oxygen scale 2, prescribed");
    }
    if (!plan.populations().isEmpty()) {
      notes.add("Scored as: " + String.join(", ", plan.populations()));
    }
    if (plan.newBaseline() != null) {
      notes.add("Usual values anew from " + Wording.time(plan.newBaseline(), now, zone));
    }
    for (Limit limit : plan.limits()) {
      notes.add(
          "Altered limit: %s %s"
              .formatted(findings.name(limit.code()), range(limit, findings.unit(limit.code()))));
    }
    if (plan.interval() != null) {
      notes.add("A set every " + Wording.span(plan.interval()));
    }
    if (!notes.isEmpty()) {
      notes.add(
          "Signed by %s until %s: %s"
              .formatted(plan.signedBy(), Wording.time(plan.until(), now, zone), plan.reason()));
    }
    return notes;
  }

  /** The same in a word each, for a line on a board. */
  static List<String> brief(Card card) {
    var notes = new ArrayList<String>();
    if (card.hold()) {
      notes.add("on hold");
    }
    if (card.ceiling() != null) {
      notes.add("ceiling of care");
    }
    if (card.oxygenScale() == 2) {
      notes.add("oxygen scale 2");
    }
    return notes;
  }

  private static String range(Limit limit, @Nullable String unit) {
    BigDecimal low = limit.low();
    BigDecimal high = limit.high();
    if (low != null && high != null) {
      return Wording.withUnit(Wording.number(low) + " to " + Wording.number(high), unit);
    }
    return low != null
        ? "from " + Wording.withUnit(Wording.number(low), unit)
        : "up to " + Wording.withUnit(Wording.number(Objects.requireNonNull(high)), unit);
  }
}
