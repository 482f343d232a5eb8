package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.driftward.deploy.whole.Caller.Answer;
import org.junit.jupiter.api.Test;

/**
 * A hospital's FHIR feed to the board. Codes and units as HL7 FHIR R4 "Vital Signs" lists them; the
 * total follows from the table of the Royal College of Physicians (2017).
 */
@WithRunningApp
class FhirIT {

  private final RunningApp app;
  private final Ward ward;

  FhirIT(RunningApp app) {
    this.app = app;
    this.ward = Ward.open(app, "linden");
  }

  @Test
  void shouldBringABundleToTheBoard() {
    var answer = app.asAdmin().post("/fhir", bundle("V-3001", 39.2));

    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    ward.awaitCard(
        "V-3001",
        Duration.ofSeconds(90),
        card -> {
          // 2 for 39.2 Cel, 2 for 22 /min; the pulse of 80 scores 0.
          assertThat(card.at("/score/low").asInt()).isEqualTo(4);
          assertThat(card.at("/score/missing").toString()).contains("consciousness");
          assertThat(card.at("/bed").asText()).isEqualTo("7");
        });
  }

  @Test
  void shouldAnswerEachFaultWithAnIssueAndKeepNothing() {
    Answer answer = app.asAdmin().post("/fhir", bundle("V-3002", 139.2));

    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.json().at("/resourceType").asText()).isEqualTo("OperationOutcome");
    assertThat(answer.json().at("/issue/0/diagnostics").asText()).startsWith("/entry/2/resource");
  }

  @Test
  void shouldRefuseBytesThatAreNoResource() {
    assertThat(app.asAdmin().post("/fhir/Observation", "{\"resourceType\": \"Tree\"}").status())
        .isEqualTo(400);
  }

  static String bundle(String encounter, double temperature) {
    var now = Instant.now().minusSeconds(60);
    return """
        {"resourceType": "Bundle", "type": "transaction", "entry": [
          {"fullUrl": "urn:uuid:5b6f7c44-0d57-4cb5-9f4e-2f3c9a8d7e01",
           "resource": {"resourceType": "Patient", "identifier": [{"value": "P-%1$s"}],
             "name": [{"family": "Harrowgate", "given": ["Sunniva"]}], "birthDate": "1948-09-20"}},
          {"fullUrl": "urn:uuid:5b6f7c44-0d57-4cb5-9f4e-2f3c9a8d7e02",
           "resource": {"resourceType": "Encounter", "status": "in-progress",
             "class": {"code": "IMP"}, "identifier": [{"value": "%1$s"}],
             "subject": {"reference": "urn:uuid:5b6f7c44-0d57-4cb5-9f4e-2f3c9a8d7e01"},
             "period": {"start": "%2$s"},
             "location": [
               {"location": {"display": "linden"}, "physicalType": {"coding": [{"code": "wa"}]}},
               {"location": {"display": "7"}, "physicalType": {"coding": [{"code": "bd"}]}}]}},
          %3$s, %4$s, %5$s]}
        """
        .formatted(
            encounter,
            now.minusSeconds(7200),
            observation("8310-5", temperature, "Cel", now),
            observation("9279-1", 22, "/min", now),
            observation("8867-4", 80, "/min", now));
  }

  private static String observation(String loinc, double value, String unit, Instant takenAt) {
    return """
        {"resource": {"resourceType": "Observation", "status": "final",
           "code": {"coding": [{"system": "http://loinc.org", "code": "%s"}]},
           "subject": {"reference": "urn:uuid:5b6f7c44-0d57-4cb5-9f4e-2f3c9a8d7e01"},
           "encounter": {"reference": "urn:uuid:5b6f7c44-0d57-4cb5-9f4e-2f3c9a8d7e02"},
           "effectiveDateTime": "%s",
           "valueQuantity": {"value": %s, "system": "http://unitsofmeasure.org", "code": "%s"}}}
        """
        .formatted(loinc, takenAt, value, unit);
  }
}
