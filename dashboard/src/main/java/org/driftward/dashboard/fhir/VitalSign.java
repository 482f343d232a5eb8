package org.driftward.dashboard.fhir;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Which profile of HL7 FHIR R4 "Vital Signs" an Observation follows, by its LOINC code. Blood
 * pressure is a panel there: systolic and diastolic are its components.
 */
final class VitalSign {

  static final String PRESSURE_PANEL = "85354-9";
  static final String PRESSURE_PROFILE = profile("bp");

  private static final Map<String, String> PROFILES =
      Map.of(
          "9279-1", profile("resprate"),
          "8867-4", profile("heartrate"),
          "2708-6", profile("oxygensat"),
          "8310-5", profile("bodytemp"),
          "8302-2", profile("bodyheight"),
          "29463-7", profile("bodyweight"));

  private VitalSign() {}

  static Optional<String> profileOf(String loinc) {
    return Optional.ofNullable(PROFILES.get(loinc));
  }

  /** Every profile that something here follows, by address. */
  static List<String> profiles() {
    return Stream.concat(PROFILES.values().stream(), Stream.of(PRESSURE_PROFILE)).sorted().toList();
  }

  private static String profile(String name) {
    return "http://hl7.org/fhir/StructureDefinition/" + name;
  }
}
