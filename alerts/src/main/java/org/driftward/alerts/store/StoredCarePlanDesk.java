package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CarePlanDesk;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.Populations;

/** Care plans are signed in PostgreSQL. */
@Singleton
public class StoredCarePlanDesk implements CarePlanDesk {

  private final Courses courses;
  private final Escalation escalation;
  private final Catalogue catalogue;
  private final Populations populations;

  public StoredCarePlanDesk(
      Courses courses, Escalation escalation, Catalogue catalogue, Populations populations) {
    this.courses = courses;
    this.escalation = escalation;
    this.catalogue = catalogue;
    this.populations = populations;
  }

  @Override
  public CarePlan sign(CarePlan plan, Actor actor) {
    // A misspelt one would leave a patient under scores that are not for them.
    for (var population : plan.populations()) {
      if (!populations.known(population)) {
        throw new RefusedException(
            "populations", population + " is none of " + populations.names());
      }
    }
    var asked = plan.withLimits(plan.limits().stream().map(this::withStandard).toList());
    return courses.change(
        List.of(plan.encounter()),
        session -> {
          var course = session.course(plan.encounter());
          var decision = escalation.planned(course, asked, actor, session.now());
          session.take(decision);
          return decision.course().plan();
        });
  }

  @Override
  public CarePlan end(String encounter, String reason, Actor actor) {
    return courses.change(
        List.of(encounter),
        session -> {
          var decision =
              escalation.planEnded(session.course(encounter), reason, actor, session.now());
          session.take(decision);
          return decision.course().plan();
        });
  }

  /** The standard that an altered limit replaces is the range the catalogue expects. */
  private Limit withStandard(Limit limit) {
    var entry =
        catalogue
            .find(limit.code())
            .filter(known -> known.accepted() != null)
            .orElseThrow(
                () ->
                    new RefusedException(
                        "limits", limit.code() + " is not a finding that has a range of values"));
    var standard = entry.expected();
    return standard == null
        ? limit.replacing(null, null)
        : limit.replacing(standard.low(), standard.high());
  }

  @Override
  public Optional<CarePlan> find(String encounter) {
    return courses.find(encounter).flatMap(course -> Optional.ofNullable(course.plan()));
  }
}
