package org.driftward.ingest.core.mapping;

import java.util.Map;
import org.driftward.ingest.contract.CodeSystem;

/**
 * Coding systems have other names in HL7 v2 (table 0396) than in FHIR (terminologies, "Using Codes
 * in Resources"). One row of a mapping serves both.
 */
public final class Systems {

  private static final Map<String, String> IN_FHIR =
      Map.of(
          "LN", CodeSystem.LOINC,
          "SCT", "http://snomed.info/sct",
          "99DRIFTWARD", CodeSystem.FINDING);

  private Systems() {}

  /** Whether it is our own: the code is the catalogue's, an answer is the option's. */
  public static boolean isOurs(String system) {
    return inFhir(system).equals(CodeSystem.FINDING);
  }

  /** As FHIR has it; a name that no table knows stays as it is. */
  static String inFhir(String system) {
    return IN_FHIR.getOrDefault(system, system);
  }
}
