package org.driftward.deploy.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.jspecify.annotations.Nullable;

/**
 * An invented patient in a bed, and the course they take.
 *
 * @param number tells one patient from another, and seeds the chance in their measurements
 * @param lag how much later than the course says this patient is seen: nobody stands at forty beds
 *     at once
 * @param plan the care plan signed for them, or null for the standard settings
 */
record DemoPatient(
    int number,
    Patient patient,
    String ward,
    String bed,
    Course course,
    Duration lag,
    @Nullable Plan plan) {

  /** What a clinician of the demo signs for a patient. */
  record Plan(int oxygenScale, @Nullable String ceiling, String reason) {}

  String encounter() {
    return "V-" + (4100 + number);
  }

  Encounter admitted(Instant began) {
    var admitted = began.minus(Duration.ofHours(37));
    return new Encounter(
        encounter(), patient, List.of(new Stay(ward, bed, admitted)), admitted, null, null, 1);
  }

  /**
   * The sets due after {@code from} and not after {@code until}. The same times give the same sets,
   * to the letter, so sending them twice changes nothing.
   */
  List<Assessment> assessments(Instant began, Instant from, Instant until) {
    var start = began.plus(lag);
    return course.sets(Duration.between(start, from), Duration.between(start, until)).stream()
        .map(set -> assessment(start, set))
        .toList();
  }

  private Assessment assessment(Instant start, Course.PlannedSet set) {
    var takenAt = start.plus(set.at());
    var chance = new Random(31L * number + set.at().toSeconds());
    var findings = new ArrayList<Finding>(set.truth().measured(chance).findings());
    findings.removeIf(finding -> set.omitted().contains(finding.code()));
    findings.addAll(set.examined());
    return new Assessment(
        encounter() + "-" + set.at().toMinutes(),
        1,
        Assessment.Status.FINAL,
        encounter(),
        patient.id(),
        takenAt,
        takenAt,
        Assessment.Source.BEDSIDE,
        "bedside." + ward,
        null,
        findings);
  }
}
