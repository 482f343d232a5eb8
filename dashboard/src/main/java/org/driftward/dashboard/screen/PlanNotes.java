package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.driftward.dashboard.core.Card;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.StandingFact.Fact;
import org.jspecify.annotations.Nullable;

/**
 * What has been signed for this patient, one line each: standing facts with who vouches for them
 * and when they are looked at again, and what ends by itself with its end.
 */
final class PlanNotes {

  private PlanNotes() {}

  static List<String> of(@Nullable CarePlan plan, Findings findings, Instant now, ZoneId zone) {
    var notes = new ArrayList<String>();
    if (plan == null) {
      return notes;
    }
    var facts = plan.standingAt(now);
    if (facts.ceiling() != null) {
      notes.add("Ceiling of care: " + facts.ceiling() + vouched(plan, Fact.CEILING, now, zone));
    }
    if (facts.oxygenScale() == 2) {
      notes.add("Oxygen scale 2, prescribed" + vouched(plan, Fact.OXYGEN_SCALE, now, zone));
    }
    if (!facts.populations().isEmpty()) {
      notes.add(
          "Scored as: "
              + String.join(", ", facts.populations())
              + vouched(plan, Fact.POPULATIONS, now, zone));
    }
    if (facts.usualConsciousness() != null) {
      notes.add(
          "Usually "
              + facts.usualConsciousness()
              + vouched(plan, Fact.USUAL_CONSCIOUSNESS, now, zone));
    }
    if (plan.inForce(now)) {
      notes.addAll(temporary(plan, findings, now, zone));
    }
    return notes;
  }

  /** What is to be looked at again, one line each; somebody has to, nothing changes by itself. */
  static List<String> reviews(@Nullable CarePlan plan, Instant now, ZoneId zone) {
    return plan == null
        ? List.of()
        : plan.reviewsDue(now).stream()
            .map(
                signed ->
                    "Review of %s due since %s; it stands until somebody signs"
                        .formatted(
                            signed.fact().word().replace('-', ' '),
                            Wording.time(signed.reviewBy(), now, zone)))
            .toList();
  }

  private static String vouched(CarePlan plan, Fact fact, Instant now, ZoneId zone) {
    var signed = plan.standing(fact);
    if (signed == null) {
      return "";
    }
    return " (signed by %s %s; review by %s)"
        .formatted(
            signed.signedBy(),
            Wording.time(signed.signedAt(), now, zone),
            Wording.time(signed.reviewBy(), now, zone));
  }

  private static List<String> temporary(
      CarePlan plan, Findings findings, Instant now, ZoneId zone) {
    var notes = new ArrayList<String>();
    if (plan.hold() != null && now.isBefore(plan.hold().until())) {
      notes.add(
          "Escalation on hold until %s: %s"
              .formatted(Wording.time(plan.hold().until(), now, zone), plan.hold().reason()));
    }
    if (plan.newBaseline() != null) {
      notes.add("Usual values anew from " + Wording.time(plan.newBaseline(), now, zone));
    }
    for (Limit limit : plan.limits()) {
      notes.add(
          "Altered limit: %s %s"
              .formatted(
                  findings.name(limit.code()),
                  range(limit.low(), limit.high(), findings.unit(limit.code()))));
    }
    if (plan.interval() != null) {
      notes.add("A set every " + Wording.span(plan.interval()));
    }
    if (!notes.isEmpty()) {
      notes.add(
          "Signed by %s%s, from %s until %s: %s"
              .formatted(
                  plan.signedBy(),
                  approved(plan),
                  Wording.time(plan.from(), now, zone),
                  Wording.time(plan.until(), now, zone),
                  plan.reason()));
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
    card.reviewsDue().forEach(fact -> notes.add("review due: " + fact.word().replace('-', ' ')));
    return notes;
  }

  private static String approved(CarePlan plan) {
    return plan.approvedBy() == null
        ? ""
        : ", agreed by "
            + plan.approvedBy()
            + (plan.approverRole() == null ? "" : " (" + plan.approverRole() + ")");
  }

  static String range(@Nullable BigDecimal low, @Nullable BigDecimal high, @Nullable String unit) {
    if (low != null && high != null) {
      return Wording.withUnit(Wording.number(low) + " to " + Wording.number(high), unit);
    }
    if (low != null) {
      return "from " + Wording.withUnit(Wording.number(low), unit);
    }
    return high == null ? "none" : "up to " + Wording.withUnit(Wording.number(high), unit);
  }
}
