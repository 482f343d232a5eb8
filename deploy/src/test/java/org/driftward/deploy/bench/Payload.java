package org.driftward.deploy.bench;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.Topic;

/**
 * Full sets of vital signs of adults, hourly, round after round over all encounters. The same every
 * time it is made.
 *
 * @param encounters how many
 * @param assessments how many in all
 */
record Payload(int encounters, int assessments) {

  static final int BEDS = 30;

  private static final Instant START = Instant.parse("2026-01-05T06:00:00Z");
  private static final int HOUR = 3600;

  private Assessment assessment(int number, Random random) {
    var encounter = "V-" + number % encounters;
    var takenAt = START.plusSeconds((long) (number / encounters) * HOUR);
    return new Assessment(
        "A-" + number,
        1,
        Status.FINAL,
        encounter,
        "P-" + encounter,
        takenAt,
        takenAt,
        Source.MONITOR,
        "m-1",
        null,
        findings(random));
  }

  private static List<Finding> findings(Random random) {
    var findings = new ArrayList<Finding>();
    findings.add(quantity("respiratory-rate", 14 + random.nextInt(6), "/min"));
    findings.add(quantity("oxygen-saturation", 94 + random.nextInt(6), "%"));
    findings.add(Finding.coded("inspired-oxygen", "air"));
    findings.add(quantity("systolic-pressure", 110 + random.nextInt(30), "mm[Hg]"));
    findings.add(quantity("diastolic-pressure", 60 + random.nextInt(20), "mm[Hg]"));
    findings.add(quantity("heart-rate", 65 + random.nextInt(30), "/min"));
    findings.add(Finding.coded("consciousness", "alert"));
    int tenths = 362 + random.nextInt(10);
    findings.add(Finding.quantity("temperature", tenths / 10 + "." + tenths % 10, "Cel"));
    return findings;
  }

  private static Finding quantity(String code, int value, String unit) {
    return Finding.quantity(code, Integer.toString(value), unit);
  }

  /** Where an encounter lies. */
  static String ward(int encounter) {
    return "ward-" + encounter / BEDS;
  }

  void sendEncounters(KafkaAccess access) {
    var format = JsonFormat.of(Encounter.class);
    try (var out = new Outbox(access)) {
      for (int i = 0; i < encounters; i++) {
        var id = "V-" + i;
        var stay = new Stay(ward(i), "1", START.minusSeconds(HOUR));
        var patient = new Patient("P-" + id, null, LocalDate.of(1960, 5, 1), null);
        var told = new Encounter(id, patient, List.of(stay), stay.from(), null, null, 1);
        out.send(Topic.ENCOUNTERS.topic(), id, format.write(told));
      }
    }
  }

  void sendAssessments(KafkaAccess access) {
    var format = JsonFormat.of(Assessment.class);
    var random = new Random(5);
    try (var out = new Outbox(access)) {
      for (int i = 0; i < assessments; i++) {
        var set = assessment(i, random);
        out.send(Topic.ASSESSMENTS.topic(), set.encounter(), format.write(set));
      }
    }
  }
}
