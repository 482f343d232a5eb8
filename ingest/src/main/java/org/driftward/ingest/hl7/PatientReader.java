package org.driftward.ingest.hl7;

import java.util.Optional;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.core.Texts;
import org.jspecify.annotations.Nullable;

/** Who it is: PID, and the number given up in MRG. */
final class PatientReader {

  private final SiteSettings settings;

  PatientReader(SiteSettings settings) {
    this.settings = settings;
  }

  /** The patient's number, PID-3 or MRG-1; empty with a fault if there is none. */
  Optional<String> number(Hl7Segment segment, int field, Content into) {
    for (int i = 0; i < segment.repetitions(field); i++) {
      var value = segment.value(field, i, 1, 1);
      if (!value.isEmpty() && counts(segment.value(field, i, 4, 1))) {
        return checked(value, segment.pointer(field), into);
      }
    }
    into.fault(
        segment.pointer(field),
        Rule.MISSING_FIELD,
        "A patient number"
            + settings.patientAuthority().map(name -> " of " + name).orElse("")
            + " is needed");
    return Optional.empty();
  }

  private boolean counts(String authority) {
    return settings.patientAuthority().isEmpty()
        || settings.patientAuthority().get().equals(authority);
  }

  /** Empty with a fault if the number is missing; a name, day or sex that is missing is null. */
  Optional<Patient> patient(Hl7Segment pid, Content into) {
    return number(pid, 3, into)
        .map(
            number ->
                new Patient(
                    number,
                    name(pid, into),
                    Hl7Time.day(pid.value(7)).orElse(null),
                    sex(pid.value(8))));
  }

  private static @Nullable String name(Hl7Segment pid, Content into) {
    var family = pid.value(5, 1);
    var given = (pid.value(5, 2) + " " + pid.value(5, 3)).strip();
    var name = given.isEmpty() ? family : family + ", " + given;
    return family.isEmpty() ? null : checked(name, pid.pointer(5), into).orElse(null);
  }

  /** HL7 table 0001; what we have no word for is other, what nobody says is not known. */
  private static Patient.@Nullable Sex sex(String code) {
    return switch (code) {
      case "" -> null;
      case "F" -> Patient.Sex.FEMALE;
      case "M" -> Patient.Sex.MALE;
      case "A", "N", "O", "X" -> Patient.Sex.OTHER;
      default -> Patient.Sex.UNKNOWN;
    };
  }

  static Optional<String> checked(String line, String pointer, Content into) {
    var fault = Texts.faultOfLine(line);
    fault.ifPresent(what -> into.fault(pointer, Rule.MALFORMED_TEXT, "it " + what));
    return fault.isPresent() ? Optional.empty() : Optional.of(line);
  }
}
