package org.driftward.dashboard.fhir;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.PublishedId;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.IntegerType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Type;

/**
 * The findings of an assessment, one Observation each; both pressures as the components of one, as
 * R4's vital signs have it. The codes are LOINC's where the catalogue has one, and always ours.
 */
final class FindingObservations {

  private static final String SYSTOLIC = "systolic-pressure";
  private static final String DIASTOLIC = "diastolic-pressure";
  private static final String ABSENT = "http://terminology.hl7.org/CodeSystem/data-absent-reason";

  private final Catalogue catalogue;

  FindingObservations(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  List<Observation> of(Assessment assessment) {
    var observations = new ArrayList<Observation>();
    boolean pressureDone = false;
    for (var finding : assessment.findings()) {
      if (!isPressure(finding)) {
        observations.add(single(assessment, finding));
      } else if (!pressureDone) {
        observations.add(pressure(assessment));
        pressureDone = true;
      }
    }
    return observations;
  }

  private Observation single(Assessment assessment, Finding finding) {
    // What an older catalogue knew stays readable under its code.
    var entry = catalogue.find(finding.code());
    var profile = entry.map(CatalogueEntry::loinc).flatMap(VitalSign::profileOf);
    var region = entry.map(CatalogueEntry::region).orElse("");
    var category = profile.isPresent() || region.equals("vital-signs") ? "vital-signs" : "exam";
    var observation = start(assessment, finding.key(), category);
    profile.ifPresent(observation.getMeta()::addProfile);
    observation.setCode(code(finding.code(), entry));
    observation.setValue(value(finding.value()));
    if (finding.key().site() != null || finding.key().side() != null) {
      observation.setBodySite(bodySite(finding.key()));
    }
    return observation;
  }

  private Observation pressure(Assessment assessment) {
    var observation = start(assessment, FindingKey.of(SYSTOLIC), "vital-signs");
    observation.getMeta().addProfile(VitalSign.PRESSURE_PROFILE);
    observation.setCode(
        About.concept(CodeSystem.LOINC, VitalSign.PRESSURE_PANEL).setText("Blood pressure"));
    for (var code : List.of(SYSTOLIC, DIASTOLIC)) {
      var component = observation.addComponent();
      component.setCode(code(code, catalogue.find(code)));
      assessment.findings().stream()
          .filter(finding -> finding.code().equals(code))
          .findFirst()
          .ifPresentOrElse(
              finding -> component.setValue(value(finding.value())),
              () -> component.setDataAbsentReason(About.concept(ABSENT, "not-performed")));
    }
    return observation;
  }

  private static boolean isPressure(Finding finding) {
    return finding.code().equals(SYSTOLIC) || finding.code().equals(DIASTOLIC);
  }

  private static Observation start(Assessment assessment, FindingKey key, String category) {
    var id = PublishedId.finding(assessment.encounter(), assessment.id(), key);
    var observation = About.assessment(assessment, id, category);
    observation.setStatus(
        switch (assessment.status()) {
          case FINAL -> ObservationStatus.FINAL;
          case AMENDED -> ObservationStatus.AMENDED;
          case RETRACTED -> ObservationStatus.ENTEREDINERROR;
        });
    observation.addPerformer().getIdentifier().setValue(assessment.by());
    return observation;
  }

  static CodeableConcept code(String code, Optional<CatalogueEntry> entry) {
    var concept = new CodeableConcept();
    entry
        .map(CatalogueEntry::loinc)
        .ifPresent(loinc -> concept.addCoding().setSystem(CodeSystem.LOINC).setCode(loinc));
    var name = entry.map(CatalogueEntry::name).orElse(code);
    concept.addCoding().setSystem(CodeSystem.FINDING).setCode(code).setDisplay(name);
    return concept.setText(name);
  }

  private static Type value(FindingValue value) {
    if (value instanceof Quantity quantity) {
      return new org.hl7.fhir.r4.model.Quantity()
          .setValue(quantity.value())
          .setUnit(quantity.unit())
          .setSystem(CodeSystem.UCUM)
          .setCode(quantity.unit());
    }
    if (value instanceof Grade grade) {
      return new IntegerType(grade.grade());
    }
    return value instanceof Coded coded
        ? About.concept(CodeSystem.FINDING, coded.code()).setText(coded.code())
        : new StringType(value.plain());
  }

  private static CodeableConcept bodySite(FindingKey key) {
    var concept = new CodeableConcept();
    if (key.site() != null) {
      concept.addCoding().setSystem(CodeSystem.SITE).setCode(key.site());
    }
    if (key.side() != null) {
      concept.addCoding().setSystem(CodeSystem.SIDE).setCode(key.side().word());
    }
    return concept;
  }
}
