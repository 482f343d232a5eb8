package org.driftward.ingest.core;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.core.AssessmentReader.Defaults;
import org.driftward.ingest.json.JsonTree;
import org.driftward.ingest.json.JsonTree.NotJsonException;

/** One request against a house with three encounters, at noon. */
final class Request {

  static final Instant NOW = Instant.parse("2026-01-05T12:00:00Z");
  static final Instant ADMITTED = Instant.parse("2026-01-05T08:00:00Z");
  static final IntakeLimits LIMITS =
      new IntakeLimits(Duration.ofMinutes(5), Duration.ofHours(24), 3);

  private static final Map<String, Encounter> HOUSE =
      Map.of(
          "V-1", encounter("V-1", "P-1", null, null),
          "V-2", encounter("V-2", "P-2", Instant.parse("2026-01-05T10:00:00Z"), null),
          "V-3", encounter("V-3", "P-3", null, "V-1"));

  private final Reading reading;

  private Request(Reading reading) {
    this.reading = reading;
  }

  /** A whole request. */
  static Request of(String json) {
    return new Request(
        new AssessmentReader(LIMITS).read(parse(json), new Defaults(NOW, "nurse-7")));
  }

  /** An assessment of V-1 taken an hour ago with these findings. */
  static Request withFindings(String findings) {
    return with("\"findings\":[" + findings + "]");
  }

  /** An assessment of V-1 taken an hour ago with these further fields. */
  static Request with(String fields) {
    return of(
        """
        {"id":"A-1","encounter":"V-1","patient":"P-1","takenAt":"2026-01-05T11:00:00Z",%s}
        """
            .formatted(fields));
  }

  static Object parse(String json) {
    try {
      return JsonTree.parse(json.getBytes(StandardCharsets.UTF_8));
    } catch (NotJsonException e) {
      throw new AssertionError(e);
    }
  }

  List<Fault> faults() {
    return new IntakeRules(Catalogue.shipped(), LIMITS)
        .check(reading, id -> Optional.ofNullable(HOUSE.get(id)), NOW);
  }

  /** Every fault as its pointer and rule. */
  List<String> broken() {
    return faults().stream().map(fault -> fault.pointer() + " " + fault.rule()).toList();
  }

  List<Assessment> assessments() {
    return reading.assessments();
  }

  private static Encounter encounter(
      String id, String patient, Instant discharged, String mergedInto) {
    return new Encounter(
        id,
        new Patient(patient, "Sample, One", LocalDate.of(1950, 2, 3), Patient.Sex.FEMALE),
        List.of(new Stay("ward-a", "1", ADMITTED)),
        ADMITTED,
        discharged,
        mergedInto,
        1);
  }
}
