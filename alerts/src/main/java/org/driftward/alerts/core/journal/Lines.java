package org.driftward.alerts.core.journal;

import java.util.HashMap;
import java.util.Map;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Reason;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.episode.Happening.PlanEnded;
import org.driftward.alerts.core.episode.Happening.PlanSigned;
import org.driftward.alerts.core.episode.Happening.Recorded;
import org.driftward.alerts.core.episode.Happening.Suppressed;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.StandingFact;

/** What each happening is written as. Member names are those of the contract's records. */
public final class Lines {

  private Lines() {}

  public static Line of(Happening happening) {
    if (happening instanceof EpisodeChanged changed) {
      return changed(changed);
    }
    if (happening instanceof Suppressed suppressed) {
      return suppressed(suppressed);
    }
    if (happening instanceof PlanSigned signed) {
      return plan("signed", signed.by(), signed.plan());
    }
    if (happening instanceof Recorded recorded) {
      return new Line(
          recorded.subject(), recorded.kind(), recorded.by(), CanonicalJson.write(recorded.body()));
    }
    return plan("ended", happening.by(), ((PlanEnded) happening).plan());
  }

  /** The subject of everything about one episode. */
  public static String subject(String episode) {
    return "episode/" + episode;
  }

  private static Line changed(EpisodeChanged changed) {
    var body = new HashMap<String, Object>();
    body.put("note", changed.note());
    body.put("reason", changed.reason());
    body.put("episode", episode(changed.episode()));
    return new Line(
        subject(changed.episode().id()), changed.kind(), changed.by(), CanonicalJson.write(body));
  }

  private static Line suppressed(Suppressed suppressed) {
    var trigger = suppressed.trigger();
    var body =
        Map.of(
            "ward", suppressed.ward(),
            "rule", trigger.rule(),
            "level", trigger.level(),
            "words", trigger.words(),
            "carePlan", suppressed.plan());
    return new Line(
        "encounter/" + suppressed.encounter(),
        "suppressed",
        suppressed.by(),
        CanonicalJson.write(body));
  }

  private static Line plan(String kind, String by, CarePlan plan) {
    return new Line("care-plan/" + plan.encounter(), kind, by, CanonicalJson.write(fields(plan)));
  }

  private static Map<String, Object> episode(Episode episode) {
    var fields = new HashMap<String, Object>();
    fields.put("id", episode.id());
    fields.put("version", episode.version());
    fields.put("encounter", episode.encounter());
    fields.put("ward", episode.ward());
    fields.put("bed", episode.bed());
    fields.put("state", episode.state());
    fields.put("level", episode.level());
    fields.put("owner", episode.owner());
    fields.put("ownerName", episode.ownerName());
    fields.put("openedAt", episode.openedAt());
    fields.put("due", episode.due());
    fields.put("awaiting", episode.awaiting());
    fields.put("rung", episode.rung());
    fields.put("audience", episode.audience());
    fields.put("reasons", episode.reasons().stream().map(Lines::reason).toList());
    fields.put("acknowledgedAt", episode.acknowledgedAt());
    fields.put("attendedAt", episode.attendedAt());
    fields.put("closedAt", episode.closedAt());
    fields.put("closedBecause", episode.closedBecause());
    return fields;
  }

  private static Map<String, Object> reason(Reason reason) {
    return Map.of(
        "rule", reason.rule(),
        "level", reason.level(),
        "words", reason.words(),
        "since", reason.since());
  }

  private static Map<String, Object> fields(CarePlan plan) {
    var fields = new HashMap<String, Object>();
    fields.put("encounter", plan.encounter());
    fields.put("version", plan.version());
    fields.put("oxygenScale", plan.oxygenScale());
    fields.put("limits", plan.limits().stream().map(Lines::limit).toList());
    fields.put("interval", plan.interval());
    fields.put("ceiling", plan.ceiling());
    fields.put("hold", plan.hold() == null ? null : hold(plan.hold()));
    if (!plan.populations().isEmpty()) {
      fields.put("populations", plan.populations());
    }
    if (plan.newBaseline() != null) {
      fields.put("newBaseline", plan.newBaseline());
    }
    fields.put("reason", plan.reason());
    fields.put("signedBy", plan.signedBy());
    fields.put("from", plan.from());
    fields.put("until", plan.until());
    fields.put("approvedBy", plan.approvedBy());
    fields.put("approverRole", plan.approverRole());
    if (plan.usualConsciousness() != null) {
      fields.put("usualConsciousness", plan.usualConsciousness());
    }
    if (!plan.standing().isEmpty()) {
      fields.put("standing", plan.standing().stream().map(Lines::standing).toList());
    }
    return fields;
  }

  private static Map<String, Object> standing(StandingFact signed) {
    return Map.of(
        "fact", signed.fact(),
        "reason", signed.reason(),
        "signedBy", signed.signedBy(),
        "signedAt", signed.signedAt(),
        "reviewBy", signed.reviewBy());
  }

  private static Map<String, Object> limit(Limit limit) {
    var fields = new HashMap<String, Object>();
    fields.put("code", limit.code());
    fields.put("low", limit.low());
    fields.put("high", limit.high());
    fields.put("oldLow", limit.oldLow());
    fields.put("oldHigh", limit.oldHigh());
    return fields;
  }

  private static Map<String, Object> hold(CarePlan.Hold hold) {
    return Map.of("reason", hold.reason(), "until", hold.until());
  }
}
