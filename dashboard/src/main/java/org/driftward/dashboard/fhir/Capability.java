package org.driftward.dashboard.fhir;

import java.util.List;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementKind;
import org.hl7.fhir.r4.model.CapabilityStatement.CapabilityStatementRestComponent;
import org.hl7.fhir.r4.model.CapabilityStatement.ResourceVersionPolicy;
import org.hl7.fhir.r4.model.CapabilityStatement.RestfulCapabilityMode;
import org.hl7.fhir.r4.model.CapabilityStatement.SystemRestfulInteraction;
import org.hl7.fhir.r4.model.CapabilityStatement.TypeRestfulInteraction;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Enumerations.FHIRVersion;
import org.hl7.fhir.r4.model.Enumerations.PublicationStatus;
import org.hl7.fhir.r4.model.Enumerations.SearchParamType;

/** What this server can do. */
final class Capability {

  private static final String PARAMETERS = "http://hl7.org/fhir/SearchParameter/";

  /** When this statement last changed. */
  private static final String DATE = "2026-11-25";

  private Capability() {}

  static CapabilityStatement statement() {
    var statement = new CapabilityStatement();
    statement.setName("Driftward");
    statement.setTitle("Driftward, a ward-level patient deterioration monitor");
    statement.setStatus(PublicationStatus.ACTIVE);
    statement.setDateElement(new DateTimeType(DATE));
    statement.setKind(CapabilityStatementKind.INSTANCE);
    statement.setFhirVersion(FHIRVersion._4_0_1);
    statement.setDescription(ScoreObservations.CAUTION);
    statement.setCopyright(
        "This material contains content from LOINC (http://loinc.org). LOINC is copyright"
            + " Regenstrief Institute, Inc. and the LOINC Committee and is available at no cost"
            + " under the license at http://loinc.org/license.");
    statement.getSoftware().setName("Driftward");
    statement.getImplementation().setDescription("Driftward as this hospital runs it");
    List.of(FhirAnswers.JSON, FhirAnswers.XML, "json", "xml").forEach(statement::addFormat);
    rest(statement.addRest());
    return statement;
  }

  private static void rest(CapabilityStatementRestComponent rest) {
    rest.setMode(RestfulCapabilityMode.SERVER);
    rest.setDocumentation(
        "Patient, Encounter and Location are read inside of Bundles, and move patients to beds.");
    rest.getSecurity()
        .setDescription("HTTP Basic or a bearer token. An account sees the wards assigned to it.");
    var observation = rest.addResource().setType("Observation");
    VitalSign.profiles().forEach(observation::addSupportedProfile);
    observation.addInteraction().setCode(TypeRestfulInteraction.CREATE);
    observation.addInteraction().setCode(TypeRestfulInteraction.READ);
    observation.addInteraction().setCode(TypeRestfulInteraction.SEARCHTYPE);
    observation.setVersioning(ResourceVersionPolicy.NOVERSION);
    observation.setConditionalCreate(true);
    parameter(observation, "encounter", "Observation-encounter", SearchParamType.REFERENCE)
        .setDocumentation("The hospital's number of the stay. Needed.");
    parameter(observation, "code", "clinical-code", SearchParamType.TOKEN);
    parameter(observation, "date", "clinical-date", SearchParamType.DATE);
    rest.addInteraction().setCode(SystemRestfulInteraction.TRANSACTION);
    rest.addInteraction().setCode(SystemRestfulInteraction.BATCH);
  }

  private static CapabilityStatement.CapabilityStatementRestResourceSearchParamComponent parameter(
      CapabilityStatement.CapabilityStatementRestResourceComponent resource,
      String name,
      String definition,
      SearchParamType type) {
    return resource
        .addSearchParam()
        .setName(name)
        .setDefinition(PARAMETERS + definition)
        .setType(type);
  }
}
