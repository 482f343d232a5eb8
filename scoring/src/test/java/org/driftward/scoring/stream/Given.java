package org.driftward.scoring.stream;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.core.timeline.Arrival.Signed;
import org.driftward.scoring.core.timeline.Arrival.Told;
import org.jspecify.annotations.Nullable;

/** Small records for tests: a set of vital signs of an adult on a ward. */
final class Given {

  static final Instant MORNING = Instant.parse("2026-01-05T08:00:00Z");

  private final String id;
  private String encounter = "V-1";
  private int revision = 1;
  private Status status = Status.FINAL;
  private Instant takenAt = MORNING;
  private List<Finding> findings = new ArrayList<>(well());

  private Given(String id) {
    this.id = id;
  }

  /** A complete set that earns no point of NEWS2 (RCP 2017, zero-point column). */
  static Given set(String id) {
    return new Given(id);
  }

  static Instant after(int hours) {
    return MORNING.plus(Duration.ofHours(hours));
  }

  Given in(String encounter) {
    this.encounter = encounter;
    return this;
  }

  Given at(int hours) {
    takenAt = after(hours);
    return this;
  }

  Given amended(int revision) {
    this.revision = revision;
    this.status = Status.AMENDED;
    return this;
  }

  Given retracted(int revision) {
    this.revision = revision;
    this.status = Status.RETRACTED;
    return this;
  }

  Given with(Finding finding) {
    without(finding.code());
    findings.add(finding);
    return this;
  }

  Given with(String code, int value, String unit) {
    return with(Finding.quantity(code, Integer.toString(value), unit));
  }

  Given without(String code) {
    findings.removeIf(finding -> finding.code().equals(code));
    return this;
  }

  Assessment made() {
    return new Assessment(
        id,
        revision,
        status,
        encounter,
        "P-1",
        takenAt,
        takenAt,
        Source.BEDSIDE,
        "n-1",
        status == Status.FINAL ? null : "typing error",
        findings);
  }

  static Told adult(String encounter, int version) {
    return encounter(encounter, version, LocalDate.of(1960, 5, 1), null);
  }

  static Told encounter(
      String id, int version, @Nullable LocalDate birthDate, @Nullable String mergedInto) {
    var stay = new Stay("north", "1", MORNING.minus(Duration.ofHours(2)));
    return new Told(
        new Encounter(
            id,
            new Patient("P-1", null, birthDate, null),
            List.of(stay),
            stay.from(),
            null,
            mergedInto,
            version));
  }

  static Signed oxygenScale2(String encounter, int fromHour, int untilHour) {
    return new Signed(
        new CarePlan(
            encounter,
            1,
            2,
            List.of(),
            null,
            null,
            null,
            "hypercapnic respiratory failure, target 88 to 92 %",
            "doctor",
            after(fromHour),
            after(untilHour)));
  }

  private static List<Finding> well() {
    return List.of(
        Finding.quantity("respiratory-rate", "16", "/min"),
        Finding.quantity("oxygen-saturation", "97", "%"),
        Finding.coded("inspired-oxygen", "air"),
        Finding.quantity("systolic-pressure", "125", "mm[Hg]"),
        Finding.quantity("heart-rate", "72", "/min"),
        Finding.coded("consciousness", "alert"),
        Finding.quantity("temperature", "36.8", "Cel"));
  }
}
