package org.driftward.scoring.core.timeline;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.StandingFact;
import org.driftward.scoring.core.timeline.Arrival.Observed;
import org.driftward.scoring.core.timeline.Arrival.Signed;
import org.driftward.scoring.core.timeline.Arrival.Told;
import org.jspecify.annotations.Nullable;

/** One adult's stay of encounter V-1, told hour by hour. */
final class Course {

  static final Instant START = Stories.START;

  private final Office office;
  private int assessments;
  private int plans;

  Course(Timeline timeline) {
    this.office = new Office(timeline);
    tell(1, stay("ward-1", -1));
  }

  static Stay stay(String ward, int hour) {
    return new Stay(ward, "1", hour(hour));
  }

  static Instant hour(double hour) {
    return START.plusMillis((long) (hour * 3_600_000));
  }

  Course tell(int version, Stay... stays) {
    office.receive(
        new Told(
            new Encounter(
                "V-1",
                new Patient("P-1", null, LocalDate.of(1960, 5, 1), null),
                List.of(stays),
                stays[0].from(),
                null,
                null,
                version)));
    return this;
  }

  Course observe(double hour, Finding... findings) {
    return observe("A-" + ++assessments, hour, findings);
  }

  Course observe(String id, double hour, Finding... findings) {
    office.receive(
        new Observed(
            new Assessment(
                id,
                1,
                Status.FINAL,
                "V-1",
                "P-1",
                hour(hour),
                hour(hour),
                Source.BEDSIDE,
                "n-1",
                null,
                List.of(findings))));
    return this;
  }

  /** Breathing as it is for {@code sets} hours, one set an hour. */
  Course breathing(int from, int sets, int rate) {
    for (int i = 0; i < sets; i++) {
      observe(from + i, Finding.quantity("respiratory-rate", Integer.toString(rate), "/min"));
    }
    return this;
  }

  /** A plan for three days. */
  Course sign(double from, Plan plan) {
    return sign(from, plan, List.of());
  }

  /** A plan for three days, and facts that stand longer. */
  Course sign(double from, Plan plan, List<StandingFact> standing) {
    office.receive(
        new Signed(
            new CarePlan(
                    "V-1",
                    ++plans,
                    plan.oxygenScale(),
                    List.of(),
                    null,
                    null,
                    null,
                    plan.populations(),
                    plan.newBaseline(),
                    "agreed",
                    "doctor",
                    hour(from),
                    hour(from).plus(Duration.ofDays(3)))
                .vouchedFor(standing)));
    return this;
  }

  /** What a plan of the test says; everything else is as without one. */
  record Plan(int oxygenScale, List<String> populations, @Nullable Instant newBaseline) {
    static final Plan PLAIN = new Plan(1, List.of(), null);
  }

  Course adopt(Edition edition) {
    office.adopt(edition);
    return this;
  }

  Course catchUp() {
    office.catchUp();
    return this;
  }

  /** How many snapshots were ever sent. */
  long sent() {
    return office.listener().lastSequence("V-1");
  }

  /** The newest picture. */
  Snapshot latest() {
    return office.listener().latest().get("V-1");
  }

  Snapshot of(String assessment) {
    return office.listener().known().get("V-1").get(assessment);
  }
}
