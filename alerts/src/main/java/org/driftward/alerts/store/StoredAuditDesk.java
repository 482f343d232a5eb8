package org.driftward.alerts.store;

import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.AuditDesk;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.AuditReport;
import org.driftward.alerts.contract.CallDesk;
import org.driftward.alerts.contract.CareHistory;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EventDesk;
import org.driftward.alerts.contract.PolicyTrial;
import org.driftward.alerts.core.audit.Audit;
import org.driftward.alerts.core.audit.EventLines;
import org.driftward.alerts.core.audit.Evidence;
import org.driftward.alerts.core.audit.Replay;
import org.driftward.alerts.core.audit.TeamCalls;
import org.driftward.alerts.core.audit.Trial;
import org.driftward.alerts.core.audit.Trial.Run;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.journal.Line;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.alerts.core.trigger.Wording;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/** Answers managers from the journal in PostgreSQL and the history that the house keeps. */
@Singleton
public class StoredAuditDesk implements AuditDesk {

  /** What was so before an event counts for it, and a call may be answered on the next day. */
  private static final Duration BEFORE = Duration.ofDays(1);

  /** Of the level's time to attend: people of a trial come when half of it is over. */
  private static final double COMES_AFTER = 0.5;

  private final AuditRecord record;
  private final Database database;
  private final JournalTable journal;
  private final Courses courses;
  private final PolicyFile policy;
  private final Catalogue catalogue;
  private final CallDesk calls;
  private final EventDesk clinical;
  private final ZoneId zone;
  private final Supplier<Optional<CareHistory>> history;

  @Inject
  StoredAuditDesk(
      AuditRecord record,
      Database database,
      JournalTable journal,
      Courses courses,
      PolicyFile policy,
      Catalogue catalogue,
      CallDesk calls,
      EventDesk clinical,
      AlertsConfig config,
      Instance<CareHistory> history) {
    this(
        record,
        database,
        journal,
        courses,
        policy,
        catalogue,
        calls,
        clinical,
        config.zone().map(ZoneId::of).orElseGet(ZoneId::systemDefault),
        () -> history.isResolvable() ? Optional.of(history.get()) : Optional.empty());
  }

  StoredAuditDesk(
      AuditRecord record,
      Database database,
      JournalTable journal,
      Courses courses,
      PolicyFile policy,
      Catalogue catalogue,
      CallDesk calls,
      EventDesk clinical,
      ZoneId zone,
      Supplier<Optional<CareHistory>> history) {
    this.record = record;
    this.database = database;
    this.journal = journal;
    this.courses = courses;
    this.policy = policy;
    this.catalogue = catalogue;
    this.calls = calls;
    this.clinical = clinical;
    this.zone = zone;
    this.history = history;
  }

  @Override
  public AuditReport report(AuditQuestion question) {
    var now = courses.now();
    return new Audit(policy.policy(), zone).report(evidence(question, now), question, now);
  }

  private Evidence evidence(AuditQuestion question, Instant now) {
    var from = question.from().minus(BEFORE);
    var wards = question.wards();
    var stays = history().stays(wards, from, question.to());
    var encounters = stays.stream().map(Stay::encounter).collect(Collectors.toSet());
    var changes = record.changes(wards, from, question.to());
    return new Evidence(
        changes,
        stays,
        history().sets(encounters, from, question.to()),
        record.suppressed(wards, from, question.to()),
        record.plans(encounters),
        TeamCalls.of(changes, calls.list(wards, from, question.to())),
        happened(wards, from, question.to()),
        end(question, now));
  }

  /** What was entered for the measures, and what the people at the bedside recorded. */
  private List<AuditEvent> happened(@Nullable Set<String> wards, Instant from, Instant to) {
    var all = new ArrayList<>(record.events(wards, from, to));
    clinical.list(wards, from, to).stream().map(StoredAuditDesk::counted).forEach(all::add);
    return all;
  }

  private static AuditEvent counted(ClinicalEvent event) {
    var kind =
        switch (event.kind()) {
          case ARREST -> AuditEvent.Kind.ARREST;
          case INTENSIVE_CARE -> AuditEvent.Kind.INTENSIVE_CARE_MOVE;
          case DEATH -> AuditEvent.Kind.DEATH;
          case INTERVENTION -> AuditEvent.Kind.INTERVENTION;
        };
    return new AuditEvent(
        event.id(),
        kind,
        event.at(),
        event.ward(),
        event.encounter(),
        AuditEvent.Place.WARD,
        event.notForResuscitation(),
        event.expected(),
        null,
        null,
        null,
        event.note());
  }

  private static Instant end(AuditQuestion question, Instant now) {
    return question.to().isBefore(now) ? question.to() : now;
  }

  @Override
  public PolicyTrial trial(String text, AuditQuestion question) {
    EscalationPolicy edited = parsed(text);
    var end = end(question, courses.now());
    var stays =
        history().stays(question.wards(), question.from(), question.to()).stream()
            .collect(Collectors.groupingBy(Stay::encounter));
    Map<String, List<CarePlan>> plans = new HashMap<>();
    record
        .plans(stays.keySet())
        .forEach(plan -> plans.computeIfAbsent(plan.encounter(), e -> new ArrayList<>()).add(plan));
    var before = new ArrayList<EpisodeChange>();
    var after = new ArrayList<EpisodeChange>();
    var inForce = escalation(policy.policy());
    var other = escalation(edited);
    stays.forEach(
        (encounter, there) -> {
          var pictures = history().snapshots(encounter, question.from(), end);
          var signed = plans.getOrDefault(encounter, List.of());
          before.addAll(
              new Replay(inForce, encounter, COMES_AFTER).run(there, signed, pictures, end));
          after.addAll(new Replay(other, encounter, COMES_AFTER).run(there, signed, pictures, end));
        });
    return Trial.compare(
        new Run(policy.policy().version(), before),
        new Run(edited.version(), after),
        happened(question.wards(), question.from(), question.to()),
        Audit.bedDays(question, zone, stays.values().stream().flatMap(List::stream).toList(), end),
        end);
  }

  private static EscalationPolicy parsed(String text) {
    try {
      return PolicyFile.parse("the edited policy", text).policy();
    } catch (IllegalStateException e) {
      throw new IllegalArgumentException(String.valueOf(e.getMessage()), e);
    }
  }

  private Escalation escalation(EscalationPolicy rules) {
    var triggers = new Triggers(rules.triggers(), catalogue, new Wording(catalogue, zone));
    return new Escalation(rules, triggers);
  }

  @Override
  public String policyInForce() {
    return policy.text();
  }

  @Override
  public void record(AuditEvent event, Actor actor) {
    append(EventLines.recorded(event, actor.account()));
  }

  @Override
  public boolean withdraw(String event, String reason, Actor actor) {
    boolean known =
        record.events(null, Instant.EPOCH, Instant.MAX).stream()
            .anyMatch(one -> one.id().equals(event));
    if (known) {
      append(EventLines.withdrawn(event, reason, actor.account()));
    }
    return known;
  }

  private void append(Line line) {
    database.transaction(
        handle -> {
          journal.append(handle, line, courses.now());
          return true;
        });
  }

  @Override
  public List<AuditEvent> events(@Nullable Set<String> wards, Instant from, Instant to) {
    return record.events(wards, from, to);
  }

  private CareHistory history() {
    return history
        .get()
        .orElseThrow(() -> new UnavailableException("no part of this house keeps the history"));
  }
}
