package org.driftward.alerts.core.episode;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.alerts.core.trigger.Wording;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/** One patient, the shipped policy, and a clock that a test moves. */
final class Bedside {

  static final Instant START = Instant.parse("2026-01-05T03:00:00Z");
  static final EscalationPolicy POLICY = PolicyFile.shipped().policy();
  static final Escalation ESCALATION =
      new Escalation(
          POLICY,
          new Triggers(
              POLICY.triggers(),
              Catalogue.shipped(),
              new Wording(Catalogue.shipped(), ZoneOffset.UTC)));

  Course course = Course.begin("V-1");
  Instant now = START;
  private long sequence;
  final List<Happening> happenings = new ArrayList<>();

  Pictures picture() {
    return Pictures.of("V-1", now).sequence(++sequence);
  }

  Pictures pictureOf(Instant asOf) {
    return Pictures.of("V-1", asOf).sequence(++sequence);
  }

  Bedside score(int total) {
    return see(picture().score(total));
  }

  Bedside see(Pictures picture) {
    return take(ESCALATION.picture(course, picture.build(), now));
  }

  Bedside after(Duration time) {
    now = now.plus(time);
    return this;
  }

  Bedside at(Instant time) {
    now = time;
    return this;
  }

  Bedside ranOut(DeadlineKind kind) {
    return take(ESCALATION.ranOut(course, kind, now));
  }

  Bedside moved(Encounter encounter) {
    return take(ESCALATION.moved(course, encounter, now));
  }

  Bedside worried(String note, Actor actor) {
    return take(ESCALATION.worry(course, note, actor, now));
  }

  Bedside signed(CarePlan plan, Actor actor) {
    return take(ESCALATION.planned(course, plan, actor, now));
  }

  Verdict act(Action action, Actor actor) {
    return act(action, actor, null, null);
  }

  Verdict act(Action action, Actor actor, @Nullable String reason, @Nullable Instant until) {
    var request = new Request(episode().id(), action, null, null, reason, "b.five", until);
    var verdict = ESCALATION.act(course, request, actor, now);
    if (verdict instanceof Verdict.Done done) {
      take(done.decision());
    }
    return verdict;
  }

  Bedside take(Decision decision) {
    course = decision.course();
    happenings.addAll(decision.happenings());
    return this;
  }

  boolean calm() {
    return course.episode() == null;
  }

  /** The newest state of the episode that others see, over or not. */
  Episode episode() {
    return changes().get(changes().size() - 1).episode();
  }

  List<EpisodeChanged> changes() {
    return happenings.stream()
        .filter(EpisodeChanged.class::isInstance)
        .map(EpisodeChanged.class::cast)
        .toList();
  }

  List<String> kinds() {
    return changes().stream().map(EpisodeChanged::kind).toList();
  }
}
