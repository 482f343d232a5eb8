package org.driftward.dashboard.fhir;

import java.time.Instant;
import java.util.Date;
import org.driftward.ingest.contract.Assessment;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Reference;

/** What every Observation says: whose, of which stay, when. */
final class About {

  static final String NAMES = "urn:driftward:observation";
  private static final String CATEGORIES =
      "http://terminology.hl7.org/CodeSystem/observation-category";

  private About() {}

  /**
   * Patient and stay are named by the hospital's numbers: this server keeps no Patient or Encounter
   * that could be read under an address.
   *
   * @param category code of HL7's observation-category
   */
  static Observation assessment(Assessment assessment, String id, String category) {
    var observation = new Observation();
    observation.setId(id);
    observation.getMeta().setVersionId(Integer.toString(assessment.revision()));
    observation.addIdentifier().setSystem(NAMES).setValue(id);
    observation.addCategory(concept(CATEGORIES, category));
    observation.setSubject(named("Patient", assessment.patient()));
    observation.setEncounter(named("Encounter", assessment.encounter()));
    observation.setEffective(moment(assessment.takenAt()));
    observation.setIssued(Date.from(assessment.recordedAt()));
    return observation;
  }

  /** As precise as it was recorded, in UTC. */
  static DateTimeType moment(Instant time) {
    return new DateTimeType(time.toString());
  }

  static CodeableConcept concept(String system, String code) {
    var concept = new CodeableConcept();
    concept.addCoding().setSystem(system).setCode(code);
    return concept;
  }

  static Reference named(String type, String number) {
    return new Reference().setType(type).setIdentifier(new Identifier().setValue(number));
  }
}
