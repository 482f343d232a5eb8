package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CarePlanDesk;
import org.driftward.alerts.contract.PlanRequest;
import org.driftward.alerts.contract.PlanRequest.Standing;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.Populations;

/** Care plans are signed in PostgreSQL. */
@Singleton
public class StoredCarePlanDesk implements CarePlanDesk {

  private static final String CONSCIOUSNESS = "consciousness";

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
  public CarePlan sign(PlanRequest request, Actor actor) {
    check(request.standing());
    return courses.change(
        List.of(request.encounter()),
        session -> {
          var course = session.course(request.encounter());
          var asked = escalation.draft(course, request, actor, session.now());
          var plan = asked.withLimits(asked.limits().stream().map(this::withStandard).toList());
          var decision = escalation.planned(course, plan, actor, session.now());
          session.take(decision);
          return decision.course().plan();
        });
  }

  /** A misspelt word would leave a patient under scores and rules that are not for them. */
  private void check(Standing standing) {
    for (var population : Objects.requireNonNullElse(standing.populations(), List.<String>of())) {
      if (!populations.known(population)) {
        throw new RefusedException(
            "populations", population + " is none of " + populations.names());
      }
    }
    var usual = standing.usualConsciousness();
    var words = catalogue.find(CONSCIOUSNESS).map(CatalogueEntry::options).orElse(List.of());
    if (usual != null && !usual.isBlank() && !words.contains(usual)) {
      throw new RefusedException("usualConsciousness", usual + " is none of " + words);
    }
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
