package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Patient.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Who this is: surname set apart, and two identifiers on every view (practice.md, section 8).
 *
 * @param about age and sex
 * @param born date of birth in words
 * @param patient the hospital's patient number
 * @param encounter number of this stay
 */
public record Identity(
    PersonName name,
    String about,
    String born,
    String patient,
    String encounter,
    String ward,
    String bed,
    String admitted) {

  public static Identity of(Encounter encounter, Instant now, ZoneId zone) {
    Patient patient = encounter.patient();
    return new Identity(
        PersonName.of(patient.name()),
        about(patient.birthDate(), patient.sex(), now.atZone(zone).toLocalDate()),
        patient.birthDate() == null ? "unknown" : Wording.date(patient.birthDate()),
        patient.id(),
        encounter.id(),
        encounter.ward(),
        encounter.bed() == null ? "–" : encounter.bed(),
        Wording.time(encounter.admitted(), now, zone));
  }

  /** {@code 74 y, female}. */
  static String about(@Nullable LocalDate born, @Nullable Sex sex, LocalDate today) {
    String age = Wording.age(born, today);
    return sex == null || sex == Sex.UNKNOWN ? age + ", sex unknown" : age + ", " + sex.word();
  }

  /** Says nothing about the person. */
  @Override
  public String toString() {
    return "Identity[" + encounter + "]";
  }
}
