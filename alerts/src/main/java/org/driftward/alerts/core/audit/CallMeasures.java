package org.driftward.alerts.core.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.core.audit.Call.Report;

/** The response team's calls. What only the team's own record tells needs that record. */
final class CallMeasures {

  static final String SUBBE = "Subbe 2019";
  private static final Duration SOON = Duration.ofMinutes(15);
  static final Duration LATE = Duration.ofMinutes(60);

  private CallMeasures() {}

  static List<Measure> of(View view) {
    return List.of(
        timely(view),
        recorded(
            view,
            "M5",
            "Critical interventions",
            "Called patients with one within 24 h of the call / called patients with a record. From"
                + " the record of the call, or recorded at the bedside.",
            SUBBE,
            "With a critical intervention within 24 h",
            call -> critical(view, call)),
        plan(view),
        activation(view),
        CostMeasure.of(view),
        rate(view),
        repeat(view),
        limitations(view),
        interventions(view));
  }

  /** M3. */
  private static Measure timely(View view) {
    var calls = view.calls();
    var times = calls.stream().map(CallMeasures::delay).toList();
    var figures =
        new ArrayList<>(
            Figures.times(
                "First trigger to call", times, calls.stream().map(Call::trace).toList()));
    figures.add(share("Within 15 min", calls, call -> delay(call).compareTo(SOON) <= 0));
    figures.add(share("Within 60 min", calls, call -> delay(call).compareTo(LATE) <= 0));
    return new Measure(
        "M3",
        "Escalation timeliness",
        "Calls within 15 min (and 60 min) of the episode's first trigger / calls with a trigger. A"
            + " call is the first time in an episode that the response team was told.",
        "Subbe 2019; cut-offs Gupta 2017, Barwise 2016",
        figures,
        null);
  }

  static Duration delay(Call call) {
    return Duration.between(call.firstTrigger(), call.at());
  }

  private static boolean critical(View view, Call call) {
    var at = record(call).critical();
    return (at != null && !at.isAfter(call.at().plus(View.BEFORE)))
        || intervened(view, call.encounter(), call.at());
  }

  /** Whether an intervention was recorded at the bedside within 24 h after a moment. */
  private static boolean intervened(View view, String encounter, Instant from) {
    return view.evidence().events().stream()
        .filter(event -> event.kind() == AuditEvent.Kind.INTERVENTION)
        .filter(event -> encounter.equals(event.encounter()))
        .anyMatch(
            event -> !event.at().isBefore(from) && !event.at().isAfter(from.plus(View.BEFORE)));
  }

  /** M6. */
  private static Measure plan(View view) {
    var how = "Calls after which the patient stayed with a written plan / such calls.";
    var stayed =
        view.calls().stream()
            .filter(call -> call.record() != null && record(call).stayed())
            .toList();
    return stayed.isEmpty()
        ? lackingRecord("M6", "Written plan", how, SUBBE)
        : new Measure(
            "M6",
            "Written plan",
            how,
            SUBBE,
            List.of(share("With a written plan", stayed, call -> record(call).plan())),
            null);
  }

  /** M7. */
  private static Measure activation(View view) {
    var how = "Calls by the patient or the family / calls of which it is known who called.";
    var known = withRecord(view).stream().filter(call -> record(call).byFamily() != null).toList();
    return known.isEmpty()
        ? Figures.lacking(
            "M7", "Patient and family activation", how, SUBBE, "who called, in the team's record")
        : new Measure(
            "M7",
            "Patient and family activation",
            how,
            SUBBE,
            List.of(
                share(
                    "Called by patient or family",
                    known,
                    call -> Boolean.TRUE.equals(record(call).byFamily()))),
            null);
  }

  /** M11. */
  private static Measure rate(View view) {
    return new Measure(
        "M11",
        "Call rate",
        "Calls x 1000 / separations (patients who left the house).",
        "ACSQHC",
        List.of(
            Figures.per(
                "Calls per 1000 separations",
                "per 1000",
                1000,
                view.calls(),
                view.separations().size(),
                Call::trace)),
        null);
  }

  /** M17. */
  private static Measure repeat(View view) {
    Map<String, Integer> calls = new HashMap<>();
    view.calls().forEach(call -> calls.merge(call.encounter(), 1, Integer::sum));
    return new Measure(
        "M17",
        "Repeat calls",
        "Patients with two or more calls / patients called.",
        "Crit Care Nurse 2021;41(4)",
        List.of(
            Figures.share(
                "Called twice or more",
                calls.keySet().stream().sorted().toList(),
                encounter -> calls.get(encounter) > 1,
                encounter -> "encounter/" + encounter)),
        null);
  }

  /** M18. */
  private static Measure limitations(View view) {
    var how =
        "Calls with a limitation set before, and with one set at the call / calls with a record.";
    var source = "Jäderling 2013";
    var calls = withRecord(view);
    if (calls.isEmpty()) {
      return lackingRecord("M18", "Limitations of treatment", how, source);
    }
    return new Measure(
        "M18",
        "Limitations of treatment",
        how,
        source,
        List.of(
            share("Set before the call", calls, call -> record(call).limitedBefore()),
            share("Set at the call", calls, call -> record(call).limitedNow())),
        null);
  }

  /** Of the issue: what an episode led to. */
  private static Measure interventions(View view) {
    var how =
        "Episodes with an intervention in the team's record, or recorded at the bedside within 24 h of"
            + " the opening / episodes opened.";
    var source = "Derived; no published definition";
    if (withRecord(view).isEmpty() && view.events(AuditEvent.Kind.INTERVENTION).isEmpty()) {
      return lackingRecord("interventions", "Episodes that led to an intervention", how, source);
    }
    var acted = new HashSet<String>();
    view.evidence().calls().stream()
        .filter(call -> call.record() != null && record(call).anyIntervention())
        .forEach(call -> acted.add(call.episode()));
    var opened = view.alarms().stream().filter(alarm -> alarm.kind().equals("opened")).toList();
    return new Measure(
        "interventions",
        "Episodes that led to an intervention",
        how,
        source,
        List.of(
            Figures.share(
                "With an intervention",
                opened,
                a -> acted.contains(a.episode()) || intervened(view, a.encounter(), a.at()),
                Alarm::trace)),
        null);
  }

  private static Measure recorded(
      View view,
      String id,
      String title,
      String how,
      String source,
      String name,
      Predicate<Call> met) {
    var calls = withRecord(view);
    return calls.isEmpty()
        ? lackingRecord(id, title, how, source)
        : new Measure(id, title, how, source, List.of(share(name, calls, met)), null);
  }

  private static Measure lackingRecord(String id, String title, String how, String source) {
    return Figures.lacking(id, title, how, source, "a response team's record of a call");
  }

  private static List<Call> withRecord(View view) {
    return view.calls().stream().filter(call -> call.record() != null).toList();
  }

  static Report record(Call call) {
    return Objects.requireNonNull(call.record());
  }

  private static Figure share(String name, List<Call> calls, Predicate<Call> met) {
    return Figures.share(name, calls, met, Call::trace);
  }
}
