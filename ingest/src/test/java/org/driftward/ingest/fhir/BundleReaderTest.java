package org.driftward.ingest.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Patient.Sex;
import org.driftward.ingest.mapping.ShippedCodes;
import org.hl7.fhir.r4.model.Bundle;
import org.junit.jupiter.api.Test;

/** References and full URLs as HL7 FHIR R4 "Resolving references in Bundles" describes them. */
class BundleReaderTest {

  private static final Instant NOW = Instant.parse("2031-03-02T06:00:00Z");

  private static final String ADMISSION =
      """
      {"resourceType": "Bundle", "type": "transaction", "entry": [
        {"fullUrl": "urn:uuid:0c3151bd-1cbf-4d64-b04d-cd9187a4c6e0",
         "resource": {"resourceType": "Patient", "identifier": [{"value": "P-70200"}],
           "name": [{"family": "Quillwater", "given": ["Maren", "Odile"]}],
           "gender": "female", "birthDate": "1950-04-03"}},
        {"resource": {"resourceType": "Location", "id": "ward", "name": "heron",
           "physicalType": {"coding": [{"code": "wa"}]}}},
        {"resource": {"resourceType": "Location", "id": "bed", "name": "A2",
           "physicalType": {"coding": [{"code": "bd"}]}}},
        {"fullUrl": "urn:uuid:9d2cd7f2-9f3e-4a6a-8d4e-1f6a3d1e2b10",
         "resource": {"resourceType": "Encounter", "status": "in-progress",
           "class": {"code": "IMP"}, "identifier": [{"value": "V-4100"}],
           "subject": {"reference": "urn:uuid:0c3151bd-1cbf-4d64-b04d-cd9187a4c6e0"},
           "period": {"start": "2031-03-01T10:00:00Z"},
           "location": [{"location": {"reference": "Location/ward"}},
                        {"location": {"reference": "Location/bed"}}]}},
        {"resource": {"resourceType": "Observation", "status": "final",
           "code": {"coding": [{"system": "http://loinc.org", "code": "9279-1"}]},
           "subject": {"reference": "urn:uuid:0c3151bd-1cbf-4d64-b04d-cd9187a4c6e0"},
           "encounter": {"reference": "urn:uuid:9d2cd7f2-9f3e-4a6a-8d4e-1f6a3d1e2b10"},
           "effectiveDateTime": "2031-03-02T05:00:00+01:00",
           "valueQuantity": {"value": 26, "system": "http://unitsofmeasure.org", "code": "/min"}}},
        {"resource": {"resourceType": "Observation", "status": "final",
           "code": {"coding": [{"system": "http://loinc.org", "code": "2823-3"}]},
           "subject": {"reference": "urn:uuid:0c3151bd-1cbf-4d64-b04d-cd9187a4c6e0"},
           "encounter": {"reference": "urn:uuid:9d2cd7f2-9f3e-4a6a-8d4e-1f6a3d1e2b10"},
           "effectiveDateTime": "2031-03-02T05:00:00+01:00",
           "valueQuantity": {"value": 4.1, "system": "http://unitsofmeasure.org",
             "code": "mmol/L"}}}]}
      """;

  private final FhirFormat format = new FhirFormat();
  private final BundleReader reader =
      new BundleReader(
          new Codings(Catalogue.shipped(), ShippedCodes.MAP),
          encounter -> Optional.empty(),
          Clock.fixed(NOW, ZoneOffset.UTC));

  @Test
  void shouldAdmitThePatientToTheBedThatTheLocationsName() {
    assertThat(read(ADMISSION).changes)
        .containsExactly(
            new EncounterChange.Put(
                "V-4100",
                new Patient(
                    "P-70200", "Quillwater, Maren Odile", LocalDate.of(1950, 4, 3), Sex.FEMALE),
                "heron",
                "A2",
                Instant.parse("2031-03-01T10:00:00Z"),
                Instant.parse("2031-03-01T10:00:00Z"),
                null));
  }

  @Test
  void shouldFollowReferencesToTheNumbersOfTheHospital() {
    assertThat(read(ADMISSION).assessments)
        .singleElement()
        .satisfies(
            assessment -> {
              assertThat(assessment.encounter()).isEqualTo("V-4100");
              assertThat(assessment.patient()).isEqualTo("P-70200");
              assertThat(assessment.takenAt()).isEqualTo("2031-03-02T04:00:00Z");
            });
  }

  @Test
  void shouldReportWhatIsNotMappedByItsPlaceInTheBundle() {
    var converted = read(ADMISSION);
    assertThat(converted.faults).isEmpty();
    assertThat(converted.unmapped)
        .singleElement()
        .satisfies(fault -> assertThat(fault.pointer()).isEqualTo("/entry/5/resource/code"));
  }

  @Test
  void shouldReadTheSameFromXmlAsFromJson() {
    var bundle = format.read(Bundle.class, FhirFormat.JSON, bytes(ADMISSION));
    var xml = bytes(format.write(bundle, FhirFormat.XML));
    var fromXml =
        reader.read(
            format.read(Bundle.class, FhirFormat.XML, xml), new Reporter("feed", "http/feed"));
    assertThat(fromXml.assessments).isEqualTo(read(ADMISSION).assessments);
    assertThat(fromXml.changes).isEqualTo(read(ADMISSION).changes);
  }

  private Converted read(String json) {
    return reader.read(
        format.read(Bundle.class, FhirFormat.JSON, bytes(json)), new Reporter("feed", "http/feed"));
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
