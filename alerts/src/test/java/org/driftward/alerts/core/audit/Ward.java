package org.driftward.alerts.core.audit;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditEvent.Kind;
import org.driftward.alerts.contract.AuditEvent.Place;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.contract.CareHistory.ObservedSet;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Reason;
import org.driftward.alerts.core.audit.Evidence.Suppressed;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/** A ward's month, written down by hand for worked examples. Minutes count from {@link #START}. */
final class Ward {

  static final Instant START = Instant.parse("2026-01-05T00:00:00Z");

  final List<EpisodeChange> changes = new ArrayList<>();
  final List<Stay> stays = new ArrayList<>();
  final List<ObservedSet> sets = new ArrayList<>();
  final List<Suppressed> suppressed = new ArrayList<>();
  final List<CarePlan> plans = new ArrayList<>();
  final List<Call> calls = new ArrayList<>();
  final List<AuditEvent> events = new ArrayList<>();
  AuditQuestion question =
      AuditQuestion.of(null, START.minus(Duration.ofDays(1)), START.plus(Duration.ofDays(10)));
  Instant until = START.plus(Duration.ofDays(10));

  static Instant at(double minutes) {
    return START.plusMillis(Math.round(minutes * 60_000));
  }

  /** Somebody lay on heron for so many days from the start. */
  Ward stay(String encounter, double days, boolean left) {
    var end = START.plusMillis(Math.round(days * 86_400_000));
    stays.add(new Stay(encounter, "P", "heron", START, end, true, left));
    return this;
  }

  /** A change of episode {@code E-<encounter>}; {@code service} for what no person did. */
  Ward change(String encounter, String kind, double minutes, Level level, String by) {
    return change(encounter, kind, minutes, level, by, "score-news2", 0, "charge nurse");
  }

  Ward change(
      String encounter,
      String kind,
      double minutes,
      Level level,
      String by,
      String rule,
      int rung,
      String audience) {
    boolean over = kind.equals("closed");
    var episode =
        new Episode(
            "E-" + encounter,
            1,
            encounter,
            "heron",
            "A1",
            over ? EpisodeState.CLOSED : EpisodeState.OPEN,
            level,
            null,
            null,
            START,
            over ? null : at(minutes + 60),
            over ? null : Awaiting.ACKNOWLEDGEMENT,
            rung,
            audience,
            List.of(new Reason(rule, level, "words", START)),
            null,
            null,
            over ? at(minutes) : null,
            over ? "recovered" : null);
    changes.add(new EpisodeChange(changes.size() + 1L, at(minutes), kind, by, null, null, episode));
    return this;
  }

  /** A set with a score, next due after so many minutes. */
  Ward set(String encounter, double minutes, @Nullable Integer score, boolean core, int interval) {
    sets.add(
        new ObservedSet(
            encounter,
            "A-" + minutes,
            at(minutes),
            score == null ? null : "news2",
            score == null ? null : BigDecimal.valueOf(score),
            0,
            core,
            core,
            at(minutes + interval),
            Duration.ofMinutes(interval)));
    return this;
  }

  /** The team was told, {@link #START} being the first trigger, and wrote nothing down. */
  Ward call(String encounter, double minutes) {
    calls.add(new Call("E-" + encounter, encounter, "heron", START, at(minutes), null));
    return this;
  }

  Ward event(Kind kind, String encounter, double minutes, Place place, boolean expected) {
    events.add(
        new AuditEvent(
            "X-" + events.size(),
            kind,
            at(minutes),
            "heron",
            encounter,
            place,
            false,
            expected,
            null,
            null,
            null,
            null));
    return this;
  }

  Evidence evidence() {
    return new Evidence(changes, stays, sets, suppressed, plans, calls, events, until);
  }

  Measure measure(String id) {
    return new Audit(PolicyFile.shipped().policy(), ZoneOffset.UTC)
        .report(evidence(), question, until).measures().stream()
            .filter(measure -> measure.id().equals(id))
            .findFirst()
            .orElseThrow();
  }

  Figure figure(String id, String name) {
    return measure(id).figures().stream()
        .filter(figure -> figure.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new AssertionError(name + " is none of " + measure(id)));
  }
}
