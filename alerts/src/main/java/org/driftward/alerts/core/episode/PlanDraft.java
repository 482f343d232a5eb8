package org.driftward.alerts.core.episode;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.CarePlanDesk.RefusedException;
import org.driftward.alerts.contract.PlanRequest;
import org.driftward.alerts.core.policy.PlanRules;
import org.driftward.ingest.contract.CatalogueEntry.Range;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.StandingFact;
import org.driftward.scoring.contract.StandingFact.Fact;
import org.driftward.scoring.contract.StandingFacts;
import org.jspecify.annotations.Nullable;

/**
 * Makes a care plan of what is asked for and what stands already: a fact that nobody mentions keeps
 * its value, its signer and its review.
 *
 * @param before the newest plan, in force or not, or null
 * @param account of whoever signs
 */
record PlanDraft(PlanRules rules, @Nullable CarePlan before, String account, Instant now) {

  /**
   * @throws RefusedException naming the field that local policy does not allow
   */
  CarePlan of(PlanRequest request) {
    var asked = request.standing();
    var old = StandingFacts.of(before, now);
    int scale = Objects.requireNonNullElse(asked.oxygenScale(), old.oxygenScale());
    var populations = Objects.requireNonNullElse(asked.populations(), old.populations());
    var usual = word(asked.usualConsciousness(), old.usualConsciousness());
    var ceiling = word(asked.ceiling(), old.ceiling());
    var signed = new ArrayList<StandingFact>();
    vouch(signed, request, Fact.OXYGEN_SCALE, scale == 1, scale == old.oxygenScale());
    vouch(
        signed,
        request,
        Fact.POPULATIONS,
        populations.isEmpty(),
        populations.equals(old.populations()));
    vouch(
        signed,
        request,
        Fact.USUAL_CONSCIOUSNESS,
        usual == null,
        Objects.equals(usual, old.usualConsciousness()));
    vouch(signed, request, Fact.CEILING, ceiling == null, Objects.equals(ceiling, old.ceiling()));
    var from = request.from() == null ? now : request.from();
    return new CarePlan(
        request.encounter(),
        1,
        scale,
        request.temporary().limits().stream().map(this::bounded).toList(),
        request.temporary().interval(),
        ceiling,
        request.temporary().hold(),
        populations,
        request.temporary().newBaseline(),
        request.reason(),
        account,
        from,
        until(request),
        request.approvedBy(),
        request.approverRole(),
        usual,
        signed);
  }

  /** What stands when a plan ends: its facts, and nothing else of it. */
  static CarePlan ended(CarePlan plan, String reason, String account, Instant now) {
    var standing = plan.standingAt(now);
    return new CarePlan(
        plan.encounter(),
        1,
        plan.standing(Fact.OXYGEN_SCALE) == null ? 1 : standing.oxygenScale(),
        List.of(),
        null,
        plan.standing(Fact.CEILING) == null ? null : standing.ceiling(),
        null,
        plan.standing(Fact.POPULATIONS) == null ? List.of() : standing.populations(),
        null,
        reason,
        account,
        now.minusMillis(1),
        now,
        null,
        null,
        plan.standing(Fact.USUAL_CONSCIOUSNESS) == null ? null : standing.usualConsciousness(),
        plan.standing());
  }

  private void vouch(
      List<StandingFact> signed, PlanRequest request, Fact fact, boolean absent, boolean same) {
    if (absent) {
      return;
    }
    @Nullable StandingFact known = before == null ? null : before.standing(fact);
    boolean again = request.standing().again() && mentioned(request, fact);
    signed.add(known != null && same && !again ? known : signature(request, fact));
  }

  private StandingFact signature(PlanRequest request, Fact fact) {
    var latest = now.plus(rules.review());
    var reviewBy = request.standing().reviewBy();
    if (reviewBy != null && !reviewBy.isAfter(now)) {
      throw new RefusedException("reviewBy", "is a time in the future");
    }
    if (reviewBy != null && reviewBy.isAfter(latest)) {
      throw new RefusedException(
          "reviewBy", "is at most " + rules.review() + " away by local policy");
    }
    return new StandingFact(
        fact, request.reason(), account, now, reviewBy == null ? latest : reviewBy);
  }

  private static boolean mentioned(PlanRequest request, Fact fact) {
    var asked = request.standing();
    return switch (fact) {
      case OXYGEN_SCALE -> asked.oxygenScale() != null;
      case POPULATIONS -> asked.populations() != null;
      case USUAL_CONSCIOUSNESS -> asked.usualConsciousness() != null;
      case CEILING -> asked.ceiling() != null;
    };
  }

  /** A plan of which nothing ends is there to be read for as long as any plan may run. */
  private Instant until(PlanRequest request) {
    if (request.until() != null) {
      return request.until();
    }
    if (!request.standsOnly()) {
      throw new RefusedException("until", "is required: limits, interval and hold end");
    }
    if (request.standing().isEmpty() && request.temporary().newBaseline() == null) {
      throw new RefusedException("", "the plan sets nothing");
    }
    return now.plus(rules.longest());
  }

  /** An end that is left open is the policy's, so that no altered limit is open-ended. */
  private Limit bounded(Limit limit) {
    @Nullable Range bounds = rules.bounds().get(limit.code());
    if (bounds == null) {
      throw new RefusedException(
          "limits", limit.code() + " may not be altered by local policy, only " + rules.codes());
    }
    for (@Nullable BigDecimal end : new BigDecimal[] {limit.low(), limit.high()}) {
      if (end != null && !bounds.holds(end)) {
        throw new RefusedException(
            "limits",
            "%s from %s to %s may be altered by local policy, not to %s"
                .formatted(limit.code(), bounds.low(), bounds.high(), end));
      }
    }
    return new Limit(
        limit.code(),
        limit.low() == null ? bounds.low() : limit.low(),
        limit.high() == null ? bounds.high() : limit.high(),
        limit.oldLow(),
        limit.oldHigh());
  }

  private static @Nullable String word(@Nullable String asked, @Nullable String old) {
    if (asked == null) {
      return old;
    }
    return asked.isBlank() ? null : asked.strip();
  }
}
