package org.driftward.deploy.bench;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.core.audit.Replay;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.policy.Ladder;
import org.driftward.alerts.core.policy.Recovery;
import org.driftward.alerts.core.policy.Response;
import org.driftward.alerts.core.trigger.Limits;
import org.driftward.alerts.core.trigger.Recent;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.alerts.core.trigger.Wording;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.deploy.demo.DemoRecord;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Editions;
import org.driftward.scoring.core.timeline.Entries;
import org.driftward.scoring.core.timeline.Entry;
import org.driftward.scoring.core.timeline.Facts;
import org.driftward.scoring.core.timeline.Head;
import org.driftward.scoring.core.timeline.Judge;
import org.driftward.scoring.core.timeline.Moment;
import org.driftward.scoring.core.timeline.Timeline;
import org.driftward.scoring.definition.ScoreBooks;
import org.jspecify.annotations.Nullable;

/**
 * The demo hospital's invented courses through the pure cores of scoring and alerts, with and
 * without what keeps alarms few. The same people answer in every row: they come when half of the
 * level's time to attend is over.
 */
final class AlarmLoad {

  static final Instant BEGAN = Instant.parse("2026-01-05T08:00:00Z");
  private static final double COMES_AFTER = 0.5;
  private static final Set<String> SOUNDING = Set.of("opened", "raised", "reopened", "hold-ended");
  private static final Duration NEXT_TO_NOTHING = Duration.ofMillis(1);

  private final Catalogue catalogue = Catalogue.shipped();
  private final EscalationPolicy shipped = PolicyFile.shipped().policy();
  private final Instant until;
  private final List<Patient> patients;

  /** One patient's pictures. */
  private record Patient(List<Stay> stays, List<CarePlan> plans, List<Snapshot> pictures) {}

  /**
   * What one way of alarming comes to.
   *
   * @param byLevel alarms of each level
   */
  record Row(String name, Map<Level, Integer> byLevel, double bedDays) {
    int alarms() {
      return byLevel.values().stream().mapToInt(Integer::intValue).sum();
    }

    double per100BedDays() {
      return 100 * alarms() / bedDays;
    }

    double per100BedDays(Level level) {
      return 100.0 * byLevel.getOrDefault(level, 0) / bedDays;
    }
  }

  AlarmLoad(int days) {
    this.until = BEGAN.plus(Duration.ofDays(days));
    this.patients = DemoRecord.of(BEGAN, until).stream().map(this::lived).toList();
  }

  int sets() {
    return patients.stream().mapToInt(patient -> patient.pictures().size()).sum();
  }

  int beds() {
    return patients.size();
  }

  List<Row> rows() {
    var one = new Recovery(1, Duration.ZERO);
    return List.of(
        everyTrigger(),
        replayed("One card per patient", with(one, true)),
        replayed("and hysteresis", with(shipped.recovery(), true)),
        replayed("and quiet periods (as shipped)", with(shipped.recovery(), false)),
        replayed("quiet periods without hysteresis", with(one, false)));
  }

  /** Every rule that a set meets calls somebody, every time. */
  private Row everyTrigger() {
    var triggers = triggers(shipped);
    var counts = new EnumMap<Level, Integer>(Level.class);
    for (var patient : patients) {
      var recent = Recent.NOTHING;
      for (var picture : patient.pictures()) {
        var set = Triggers.setOf(picture);
        var found = triggers.evaluate(picture, recent.before(set), Limits.NONE);
        recent = recent.before(set).plus(found.mark());
        if (!picture.asOf().isBefore(BEGAN)) {
          found.fired().stream().map(Trigger::level).forEach(l -> counts.merge(l, 1, Integer::sum));
        }
      }
    }
    return new Row("Every trigger of every set", counts, bedDays());
  }

  private Row replayed(String name, EscalationPolicy policy) {
    var escalation = new Escalation(policy, triggers(policy));
    var counts = new EnumMap<Level, Integer>(Level.class);
    for (var patient : patients) {
      var encounter = patient.stays().get(0).encounter();
      new Replay(escalation, encounter, COMES_AFTER)
          .run(patient.stays(), patient.plans(), patient.pictures(), until).stream()
              .filter(change -> SOUNDING.contains(change.kind()) && !change.at().isBefore(BEGAN))
              .map(EpisodeChange::episode)
              .forEach(episode -> counts.merge(episode.level(), 1, Integer::sum));
    }
    return new Row(name, counts, bedDays());
  }

  private double bedDays() {
    return patients.size() * (double) Duration.between(BEGAN, until).toDays();
  }

  private EscalationPolicy with(Recovery recovery, boolean loud) {
    var ladder = shipped.ladder();
    var times =
        loud ? new Ladder(loud(ladder.high()), loud(ladder.medium()), loud(ladder.low())) : ladder;
    return new EscalationPolicy(
        shipped.version(),
        shipped.triggers(),
        recovery,
        times,
        shipped.backEntry(),
        shipped.longestHold(),
        shipped.deciders(),
        shipped.plans(),
        shipped.shifts(),
        shipped.outreach());
  }

  private static Response loud(Response response) {
    return new Response(response.rungs(), response.attend(), response.reassess(), NEXT_TO_NOTHING);
  }

  private Triggers triggers(EscalationPolicy policy) {
    return new Triggers(policy.triggers(), catalogue, new Wording(catalogue, ZoneOffset.UTC));
  }

  private Patient lived(DemoRecord record) {
    var encounter = record.encounter();
    var book = ScoreBooks.shipped(catalogue);
    var policy = org.driftward.scoring.policy.PolicyFile.shipped();
    var timeline = new Timeline(Editions.only(new Judge(catalogue, book, policy)));
    var nothing = new NoEntries();
    var standing = timeline.resume(encounter.id(), Facts.NONE, 0, nothing);
    standing = timeline.take(standing, nothing, encounter, null).standing();
    for (var plan : record.plans()) {
      standing = timeline.take(standing, nothing, plan, null).standing();
    }
    var pictures = new LinkedHashMap<String, Snapshot>();
    for (var assessment : record.assessments()) {
      var outcome = timeline.take(standing, nothing, Entry.of(assessment), null);
      outcome.snapshots().forEach(snapshot -> pictures.put(snapshot.assessment(), snapshot));
      standing = outcome.standing();
    }
    var stay =
        new Stay(
            encounter.id(),
            encounter.patient().id(),
            encounter.ward(),
            encounter.admitted(),
            null,
            true,
            false);
    return new Patient(List.of(stay), record.plans(), new ArrayList<>(pictures.values()));
  }

  /** Every set here is the newest when it comes, so nobody asks for the earlier ones. */
  private static final class NoEntries implements Entries {
    @Override
    public Optional<Entry> find(String assessment) {
      return Optional.empty();
    }

    @Override
    public Iterator<Entry> after(@Nullable Moment moment) {
      return List.<Entry>of().iterator();
    }

    @Override
    public Optional<Head> checkpoint(@Nullable Moment moment) {
      return Optional.empty();
    }
  }
}
