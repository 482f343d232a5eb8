package org.driftward.alerts.core.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/** Altered limits and holds: how many are in force, and what they kept quiet. */
final class PlanMeasures {

  /** A rule that fired, or that altered limits kept from firing. */
  private record Fired(String trace, Level level, boolean quiet) {}

  private PlanMeasures() {}

  static List<Measure> of(View view) {
    return List.of(altered(view), inForce(view));
  }

  private static Measure altered(View view) {
    var triggers = triggers(view);
    var figures = new ArrayList<Figure>();
    figures.add(Figures.share("Suppressed, all levels", triggers, Fired::quiet, Fired::trace));
    for (var level : Figures.GRAVEST_FIRST) {
      figures.add(
          Figures.share(
              "Suppressed, " + level.word(),
              triggers.stream().filter(t -> t.level() == level).toList(),
              Fired::quiet,
              Fired::trace));
    }
    return new Measure(
        "M16",
        "Altered limits",
        "Triggers that altered limits kept quiet / all triggers, each counted once in an episode and"
            + " once for as long as it was kept quiet.",
        "PMC10581276",
        figures,
        null);
  }

  private static List<Fired> triggers(View view) {
    var triggers = new ArrayList<Fired>();
    var known = new HashSet<String>();
    for (var change : view.evidence().changes()) {
      var episode = change.episode();
      for (var reason : episode.reasons()) {
        boolean first = known.add(episode.id() + "/" + reason.rule());
        if (first && view.window().holds(change.at(), episode.ward())) {
          triggers.add(new Fired("episode/" + episode.id(), reason.level(), false));
        }
      }
    }
    for (var quiet : view.evidence().suppressed()) {
      if (view.window().holds(quiet.at(), quiet.ward())) {
        triggers.add(new Fired("encounter/" + quiet.encounter(), quiet.level(), true));
      }
    }
    return triggers;
  }

  private static Measure inForce(View view) {
    var end = view.evidence().until();
    var present =
        view.evidence().stays().stream()
            .filter(stay -> view.window().sees(stay.ward()) && !stay.from().isAfter(end))
            .filter(stay -> stay.until() == null || stay.until().isAfter(end))
            .toList();
    return new Measure(
        "limits-in-force",
        "Holds and altered limits in force",
        "Patients with one at the end of the stretch / patients on the ward then.",
        "Derived; no published definition",
        List.of(
            Figures.share(
                "With altered limits",
                present,
                s -> planned(view, s.encounter(), end, plan -> !plan.limits().isEmpty()),
                View::trace),
            Figures.share(
                "With escalation on hold",
                present,
                s ->
                    planned(
                        view,
                        s.encounter(),
                        end,
                        plan -> plan.hold() != null && plan.hold().until().isAfter(end)),
                View::trace),
            Figures.share(
                "With a ceiling of care",
                present,
                s -> ceiling(view, s.encounter(), end) != null,
                View::trace)),
        null);
  }

  /** Whether the newest plan of the patient at a moment is in force and meets the condition. */
  private static boolean planned(
      View view, String encounter, Instant at, Predicate<CarePlan> condition) {
    return newest(view, encounter, at)
        .filter(plan -> plan.inForce(at))
        .filter(condition)
        .isPresent();
  }

  private static @Nullable String ceiling(View view, String encounter, Instant at) {
    return newest(view, encounter, at).map(plan -> plan.standingAt(at).ceiling()).orElse(null);
  }

  private static Optional<CarePlan> newest(View view, String encounter, Instant at) {
    return view.evidence().plans().stream()
        .filter(plan -> plan.encounter().equals(encounter) && !plan.from().isAfter(at))
        .reduce((one, other) -> one.version() > other.version() ? one : other);
  }
}
