package org.driftward.deploy.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;

/**
 * The demo hospital's courses as a record of the past, for measurements that need no running house.
 *
 * @param plans signed for the patient, renewed before they end
 */
public record DemoRecord(Encounter encounter, List<CarePlan> plans, List<Assessment> assessments) {

  private static final Duration BEFORE = Duration.ofHours(37);
  private static final Duration RENEWED = Duration.ofDays(2);

  /** Every patient from the day before {@code began} until {@code until}. */
  public static List<DemoRecord> of(Instant began, Instant until) {
    return DemoHospital.patients().stream()
        .map(
            patient ->
                new DemoRecord(
                    patient.admitted(began),
                    plans(patient, began.minus(BEFORE), until),
                    patient.assessments(began, began.minus(BEFORE), until)))
        .toList();
  }

  private static List<CarePlan> plans(DemoPatient patient, Instant from, Instant until) {
    var plan = patient.plan();
    if (plan == null) {
      return List.of();
    }
    var plans = new ArrayList<CarePlan>();
    for (var at = from; at.isBefore(until); at = at.plus(RENEWED)) {
      plans.add(
          new CarePlan(
              patient.encounter(),
              plans.size() + 1L,
              plan.oxygenScale(),
              List.of(),
              null,
              plan.ceiling(),
              null,
              plan.reason(),
              "response",
              at,
              at.plus(Duration.ofDays(3))));
    }
    return plans;
  }
}
