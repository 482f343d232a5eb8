package org.driftward.ingest.contract;

import java.time.LocalDate;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * @param id the hospital's patient number
 * @param name family name, comma, given names; or null where the source gives none
 * @param birthDate or null where unknown; age-bound scores then do not apply
 */
public record Patient(
    String id, @Nullable String name, @Nullable LocalDate birthDate, @Nullable Sex sex) {

  /** Administrative sex, the four codes of HL7 FHIR R4 {@code administrative-gender}. */
  public enum Sex implements Word {
    FEMALE,
    MALE,
    OTHER,
    UNKNOWN
  }

  public Patient {
    Objects.requireNonNull(id, "id");
  }

  /** Says nothing about the person. */
  @Override
  public String toString() {
    return "Patient[redacted]";
  }
}
