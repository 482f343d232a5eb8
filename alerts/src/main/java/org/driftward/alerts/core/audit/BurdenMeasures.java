package org.driftward.alerts.core.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.contract.EpisodeChange;

/** How many alarms fell on people, how far they climbed, and whether anybody acted on them. */
final class BurdenMeasures {

  private BurdenMeasures() {}

  static List<Measure> of(View view) {
    return List.of(burden(view), rungs(view), perShift(view));
  }

  private static Measure burden(View view) {
    var alarms = view.alarms();
    double bedDays = view.bedDays();
    var figures = new ArrayList<Figure>();
    figures.add(
        Figures.per("Alarms per patient-day", "per patient-day", 1, alarms, bedDays, Alarm::trace));
    figures.add(
        Figures.per(
            "Alarms per 100 occupied bed-days",
            "per 100 bed-days",
            100,
            alarms,
            bedDays,
            Alarm::trace));
    for (var level : Figures.GRAVEST_FIRST) {
      figures.add(
          Figures.per(
              "Alarms per 100 occupied bed-days, " + level.word(),
              "per 100 bed-days",
              100,
              alarms.stream().filter(alarm -> alarm.level() == level).toList(),
              bedDays,
              Alarm::trace));
    }
    var settled =
        alarms.stream().filter(alarm -> alarm.answered() != null || alarm.over() != null).toList();
    figures.add(
        Figures.share("Alarms acted on", settled, alarm -> alarm.answered() != null, Alarm::trace));
    return new Measure(
        "M20",
        "Alert burden",
        "Alarms (an episode opened, got worse, or its rest ended) over occupied bed-days; alarms that"
            + " a person answered / alarms that were answered or went away by themselves.",
        "Derived; no published definition",
        figures,
        null);
  }

  private static Measure rungs(View view) {
    var byRung = new TreeMap<Integer, List<EpisodeChange>>();
    for (var change : view.evidence().changes()) {
      if (change.kind().equals("escalated")
          && view.window().holds(change.at(), change.episode().ward())) {
        byRung.computeIfAbsent(change.episode().rung(), r -> new ArrayList<>()).add(change);
      }
    }
    var figures = new ArrayList<Figure>();
    byRung.forEach(
        (rung, changes) ->
            figures.add(
                Figures.per(
                    "To rung " + (rung + 1),
                    "per alarm",
                    1,
                    changes,
                    view.alarms().size(),
                    change -> "episode/" + change.episode().id())));
    return new Measure(
        "escalations",
        "Escalations by rung",
        "Steps up the ladder, by a clock that ran out or by a person / alarms. Rung 1 is told first.",
        "Derived; no published definition",
        figures,
        null);
  }

  private static Measure perShift(View view) {
    var how = "Alarms / nurse-shifts worked.";
    var source = "Derived; no published definition";
    var staffing = view.events(AuditEvent.Kind.STAFFING);
    int shifts =
        staffing.stream().mapToInt(event -> event.answered() == null ? 0 : event.answered()).sum();
    if (shifts == 0) {
      return Figures.lacking(
          "alarms-per-nurse-shift",
          "Alarms per nurse-shift",
          how,
          source,
          "how many nurse-shifts were worked: record an event of the kind staffing");
    }
    return new Measure(
        "alarms-per-nurse-shift",
        "Alarms per nurse-shift",
        how,
        source,
        List.of(
            Figures.per(
                "Alarms per nurse-shift",
                "per nurse-shift",
                1,
                view.alarms(),
                shifts,
                Alarm::trace)),
        null);
  }
}
