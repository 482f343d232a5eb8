package org.driftward.alerts.core.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditEvent.Kind;
import org.driftward.alerts.contract.AuditEvent.Place;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.ingest.contract.Level;

/** What became of patients, as people entered it, and what had been known before. */
final class EventMeasures {

  private static final String SUBBE = "Subbe 2019";

  /** Churpek 2016. */
  private static final Duration IN_TIME = Duration.ofHours(6);

  private EventMeasures() {}

  static List<Measure> of(View view) {
    return List.of(
        wardArrests(view),
        predictable(view),
        intensiveCare(view),
        culture(view),
        codes(view),
        deaths(view),
        afferent(view));
  }

  private static Measure wardArrests(View view) {
    var how =
        "Arrests outside intensive care and emergency without an order not to resuscitate / 1000"
            + " admissions.";
    return view.events(Kind.ARREST).isEmpty()
        ? lacking("M1", "Ward arrests", how, SUBBE, "arrest")
        : new Measure(
            "M1",
            "Ward arrests",
            how,
            SUBBE,
            List.of(
                Figures.per(
                    "Per 1000 admissions",
                    "per 1000",
                    1000,
                    onWard(view),
                    view.admissions().size(),
                    View::trace)),
            null);
  }

  private static List<AuditEvent> onWard(View view) {
    return view.events(Kind.ARREST).stream()
        .filter(event -> event.place() == Place.WARD && !event.limitation())
        .toList();
  }

  private static Measure predictable(View view) {
    var how = "Ward arrests with a trigger in the 24 h before / all ward arrests.";
    var arrests = onWard(view);
    return arrests.isEmpty()
        ? lacking("M2", "Predictable arrests", how, SUBBE, "arrest")
        : new Measure(
            "M2",
            "Predictable arrests",
            how,
            SUBBE,
            List.of(
                Figures.share(
                    "With a trigger before", arrests, e -> triggered(view, e), View::trace)),
            null);
  }

  private static boolean triggered(View view, AuditEvent event) {
    return view.evidence().changes().stream()
        .filter(change -> change.episode().encounter().equals(event.encounter()))
        .flatMap(change -> change.episode().reasons().stream())
        .anyMatch(reason -> inTheDayBefore(reason.since(), event));
  }

  private static boolean inTheDayBefore(Instant at, AuditEvent event) {
    return !at.isAfter(event.at()) && !at.isBefore(event.at().minus(View.BEFORE));
  }

  /** M4. */
  private static Measure intensiveCare(View view) {
    var how =
        "Moves within 6 h of the first trigger of high level in the 24 h before / all moves with such"
            + " a trigger.";
    var source = "Churpek 2016";
    var moves = view.events(Kind.INTENSIVE_CARE_MOVE);
    if (moves.isEmpty()) {
      return lacking("M4", "Trigger to intensive care", how, source, "intensive-care-move");
    }
    var critical = moves.stream().filter(move -> firstCritical(view, move).isPresent()).toList();
    var times =
        critical.stream()
            .map(move -> Duration.between(firstCritical(view, move).orElseThrow(), move.at()))
            .toList();
    var figures =
        new ArrayList<>(
            Figures.times(
                "First critical trigger to move",
                times,
                critical.stream().map(View::trace).toList()));
    figures.add(
        Figures.share(
            "Within 6 h",
            critical,
            move ->
                Duration.between(firstCritical(view, move).orElseThrow(), move.at())
                        .compareTo(IN_TIME)
                    <= 0,
            View::trace));
    return new Measure("M4", "Trigger to intensive care", how, source, figures, null);
  }

  private static Optional<Instant> firstCritical(View view, AuditEvent event) {
    return view.evidence().changes().stream()
        .filter(change -> change.episode().encounter().equals(event.encounter()))
        .flatMap(change -> change.episode().reasons().stream())
        .filter(reason -> reason.level() == Level.HIGH && inTheDayBefore(reason.since(), event))
        .map(reason -> reason.since())
        .min(Instant::compareTo);
  }

  /** M8. */
  private static Measure culture(View view) {
    var how = "Mean score of the survey, and how many answered / how many were asked.";
    var surveys = view.events(Kind.SURVEY);
    if (surveys.isEmpty()) {
      return lacking("M8", "Culture of safety", how, SUBBE, "survey");
    }
    double answered = surveys.stream().mapToInt(e -> Objects.requireNonNull(e.answered())).sum();
    double asked = surveys.stream().mapToInt(e -> Objects.requireNonNull(e.asked())).sum();
    double points =
        surveys.stream()
            .mapToDouble(
                e ->
                    Objects.requireNonNull(e.value()).doubleValue()
                        * Objects.requireNonNull(e.answered()))
            .sum();
    var traces = surveys.stream().map(View::trace).toList();
    return new Measure(
        "M8",
        "Culture of safety",
        how,
        SUBBE,
        List.of(
            Figures.figure("Mean score", "points", 1, points, answered, traces, List.of()),
            Figures.figure("Response rate", "%", 100, answered, asked, traces, List.of())),
        null);
  }

  /** M10. */
  private static Measure codes(View view) {
    var how = "Arrests outside intensive care / all arrests, emergency excluded from both.";
    var source = "IHI";
    var codes =
        view.events(Kind.ARREST).stream().filter(e -> e.place() != Place.EMERGENCY).toList();
    return codes.isEmpty()
        ? lacking("M10", "Codes outside intensive care", how, source, "arrest")
        : new Measure(
            "M10",
            "Codes outside intensive care",
            how,
            source,
            List.of(
                Figures.share(
                    "Outside intensive care", codes, e -> e.place() == Place.WARD, View::trace)),
            null);
  }

  /** M12. */
  private static Measure deaths(View view) {
    var how =
        "Unexpected deaths, and deaths with an alarm in the 24 h before that nobody answered within"
            + " policy / 1000 separations each.";
    var source = "ACSQHC names them; the formula is from memory";
    var deaths = view.events(Kind.DEATH);
    if (deaths.isEmpty()) {
      return lacking("M12", "Deaths", how, source, "death");
    }
    int separations = view.separations().size();
    var unexpected = deaths.stream().filter(e -> !e.expected()).toList();
    var failed = deaths.stream().filter(e -> unanswered(view, e)).toList();
    return new Measure(
        "M12",
        "Deaths",
        how,
        source,
        List.of(
            Figures.per("Unexpected", "per 1000", 1000, unexpected, separations, View::trace),
            Figures.per(
                "After failed escalation", "per 1000", 1000, failed, separations, View::trace)),
        null);
  }

  private static boolean unanswered(View view, AuditEvent death) {
    return view.everyAlarm().stream()
        .filter(alarm -> alarm.encounter().equals(death.encounter()))
        .filter(alarm -> inTheDayBefore(alarm.at(), death))
        .anyMatch(
            alarm -> {
              var limit = view.policy().ladder().of(alarm.level()).rung(0).acknowledge();
              var took = alarm.toAnswer();
              return alarm.judged(alarm.answered(), limit, death.at())
                  && (took == null || took.compareTo(limit) > 0);
            });
  }

  /** M13. */
  private static Measure afferent(View view) {
    var how =
        "Ward arrests, unplanned moves to intensive care and unexpected deaths with criteria met and"
            + " no call in the 24 h before / all of them. A period is a run of sets that meet the"
            + " policy's thresholds of medium level.";
    var source = "Trinkle and Flabouris";
    var events = new ArrayList<>(onWard(view));
    view.events(Kind.INTENSIVE_CARE_MOVE).stream().filter(e -> !e.expected()).forEach(events::add);
    view.events(Kind.DEATH).stream().filter(e -> !e.expected()).forEach(events::add);
    if (events.isEmpty()) {
      return lacking("M13", "Afferent-limb failure", how, source, "arrest");
    }
    return new Measure(
        "M13",
        "Afferent-limb failure",
        how,
        source,
        List.of(
            Figures.share(
                "All", events, e -> Criteria.periods(view, e) > 0 && !called(view, e), View::trace),
            Figures.share(
                "Single period",
                events,
                e -> Criteria.periods(view, e) == 1 && !called(view, e),
                View::trace),
            Figures.share(
                "Multiple periods",
                events,
                e -> Criteria.periods(view, e) > 1 && !called(view, e),
                View::trace)),
        null);
  }

  private static boolean called(View view, AuditEvent event) {
    return view.evidence().calls().stream()
        .anyMatch(
            call -> call.encounter().equals(event.encounter()) && inTheDayBefore(call.at(), event));
  }

  private static Measure lacking(String id, String title, String how, String source, String kind) {
    return Figures.lacking(
        id,
        title,
        how,
        source,
        "events of the kind " + kind + ", which no feed brings: record them");
  }
}
