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

/** Care plans are signed in PostgreSQL. */
@Singleton
public class StoredCarePlanDesk implements CarePlanDesk {

  private final Courses courses;
  private final Escalation escalation;
  private final Catalogue catalogue;

  public StoredCarePlanDesk(Courses courses, Escalation escalation, Catalogue catalogue) {
    this.courses = courses;
    this.escalation = escalation;
    this.catalogue = catalogue;
  }

  @Override
  public CarePlan sign(CarePlan plan, Actor actor) {
    var asked = withLimits(plan, plan.limits().stream().map(this::withStandard).toList());
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

  private static CarePlan withLimits(CarePlan plan, List<Limit> limits) {
    return new CarePlan(
        plan.encounter(),
        plan.version(),
        plan.oxygenScale(),
        limits,
        plan.interval(),
        plan.ceiling(),
        plan.hold(),
        plan.reason(),
        plan.signedBy(),
        plan.from(),
        plan.until(),
        plan.approvedBy(),
        plan.approverRole());
  }

  @Override
  public Optional<CarePlan> find(String encounter) {
    return courses.find(encounter).flatMap(course -> Optional.ofNullable(course.plan()));
  }
}
