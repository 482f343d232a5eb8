package org.driftward.ingest.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.ingest.core.mapping.CodeRow;
import org.driftward.ingest.core.mapping.CodeRows;
import org.driftward.ingest.core.mapping.CodeTable;
import org.driftward.ingest.mapping.ShippedCodes;
import org.hl7.fhir.r4.model.Observation;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Codes, units and components as HL7 FHIR R4 "Vital Signs" lists them (LOINC 9279-1, 8867-4,
 * 2708-6, 8310-5, 85354-9 with 8480-6 and 8462-4), and HL7 US Core "Pulse Oximetry" (59408-5,
 * 3151-8 and 3150-0 as components).
 */
class ObservationReaderTest {

  private static final FhirContext FHIR = FhirContext.forR4Cached();
  private static final Instant NOW = Instant.parse("2031-03-02T06:00:00Z");

  private final BundleReader reader =
      new BundleReader(
          new Codings(Catalogue.shipped(), ShippedCodes.MAP),
          encounter -> java.util.Optional.empty(),
          Clock.fixed(NOW, ZoneOffset.UTC));

  @ParameterizedTest
  @CsvSource({
    "9279-1, 26, /min, respiratory-rate, 26, /min",
    "8867-4, 44, /min, heart-rate, 44, /min",
    "2708-6, 95, %, oxygen-saturation, 95, %",
    "59408-5, 95, %, oxygen-saturation, 95, %",
    "8310-5, 36.5, Cel, temperature, 36.5, Cel",
    "8310-5, 100.4, [degF], temperature, 38, Cel",
    "8480-6, 16, kPa, systolic-pressure, 120.010201, mm[Hg]"
  })
  void shouldReadAQuantityInTheCataloguesUnit(
      String loinc, String value, String unit, String code, String expected, String expectedUnit) {
    var converted = read(observation(loinc, quantity(value, unit)));
    assertThat(converted.faults).isEmpty();
    assertThat(converted.assessments)
        .singleElement()
        .satisfies(
            assessment ->
                assertThat(assessment.findings())
                    .containsExactly(Finding.quantity(code, expected, expectedUnit)));
  }

  @Test
  void shouldReadTheComponentsOfABloodPressure() {
    var converted =
        read(
            observation(
                "85354-9",
                """
                "component": [
                  {"code": {"coding": [{"system": "http://loinc.org", "code": "8480-6"}]}, %s},
                  {"code": {"coding": [{"system": "http://loinc.org", "code": "8462-4"}]}, %s}]
                """
                    .formatted(quantity("107", "mm[Hg]"), quantity("60", "mm[Hg]"))));
    assertThat(converted.assessments.get(0).findings())
        .containsExactly(
            Finding.quantity("systolic-pressure", "107", "mm[Hg]"),
            Finding.quantity("diastolic-pressure", "60", "mm[Hg]"));
  }

  @Test
  void shouldReadInhaledOxygenBesideTheSaturation() {
    var converted =
        read(
            observation(
                "59408-5",
                quantity("95", "%")
                    + """
                    , "component": [
                      {"code": {"coding": [{"system": "http://loinc.org", "code": "3151-8"}]}, %s}]
                    """
                        .formatted(quantity("6", "L/min"))));
    assertThat(converted.assessments.get(0).findings())
        .containsExactly(
            Finding.quantity("oxygen-saturation", "95", "%"),
            Finding.quantity("oxygen-flow", "6", "L/min"));
  }

  @ParameterizedTest
  @CsvSource({"248234008, alert", "300202002, voice", "450847001, pain", "422768004, unresponsive"})
  void shouldReadTheAnswersOfAvpu(String snomed, String option) {
    var converted =
        read(
            observation(
                "67775-7",
                """
                "valueCodeableConcept": {"coding": [
                  {"system": "http://snomed.info/sct", "code": "%s"}]}
                """
                    .formatted(snomed)));
    assertThat(converted.assessments.get(0).findings())
        .containsExactly(Finding.coded("consciousness", option));
  }

  /** Component grades of the Glasgow Coma Scale as in the R4 example "glasgow": E4 V4 M5. */
  @Test
  void shouldReadTheGradesOfTheGlasgowComaScale() {
    var converted =
        read(
            observation(
                "9269-2",
                """
                "component": [
                  {"code": {"coding": [{"system": "http://loinc.org", "code": "9267-6"}]},
                   "valueInteger": 4},
                  {"code": {"coding": [{"system": "http://loinc.org", "code": "9270-0"}]},
                   "valueInteger": 4},
                  {"code": {"coding": [{"system": "http://loinc.org", "code": "9268-4"}]},
                   "valueInteger": 5}]
                """));
    assertThat(converted.assessments.get(0).findings())
        .contains(
            Finding.grade("gcs-eye", 4),
            Finding.grade("gcs-verbal", 4),
            Finding.grade("gcs-motor", 5));
  }

  @ParameterizedTest
  @CsvSource({"C, Cel", "bpm, /min", "mmHg, mm[Hg]", "kg, /min"})
  void shouldRefuseAUnitItCannotConvert(String unit, String ignored) {
    assertThat(read(observation("8310-5", quantity("37", unit))).faults)
        .extracting(Fault::pointer, Fault::rule)
        .containsExactly(org.assertj.core.groups.Tuple.tuple("/valueQuantity/code", "wrong-unit"));
  }

  @Test
  void shouldPointAtEveryFault() {
    var observation = observation("8310-5", quantity("37", "warm"));
    observation.setStatus(Observation.ObservationStatus.UNKNOWN);
    observation.setEncounter(null);
    observation.setEffective(null);
    assertThat(read(observation).faults)
        .extracting(Fault::pointer)
        .containsExactly("/status", "/encounter", "/effectiveDateTime", "/valueQuantity/code");
  }

  @Test
  void shouldReportAndNotRefuseWhatTheCatalogueDoesNotKnow() {
    var converted = read(observation("2823-3", quantity("4.1", "mmol/L")));
    assertThat(converted.faults).isEmpty();
    assertThat(converted.assessments).isEmpty();
    assertThat(converted.unmapped)
        .singleElement()
        .satisfies(fault -> assertThat(fault.rule()).isEqualTo("unmapped-code"));
    assertThat(converted.codes)
        .containsExactly(
            new UnmappedCode(
                new ForeignCode("http/feed", "http://loinc.org", "2823-3"), null, "mmol/L"));
  }

  /** The row may as well stand in a site's file, or be what somebody said on the page. */
  @Test
  void shouldReadByTheMapWhatTheCodeSaysOfSiteUnitAndAnswer() {
    var pulse = row("DPL", "pulse-amplitude", "dorsalis-pedis", Side.LEFT, Map.of(), Map.of());
    var rate = row("HF", "heart-rate", null, null, Map.of(), Map.of("Schlaege", "/min"));
    var awake = row("VIG", "consciousness", null, null, Map.of("wach", "alert"), Map.of());
    var mapped =
        new BundleReader(
            new Codings(
                Catalogue.shipped(),
                CodeTable.of(ShippedCodes.RULES, CodeRows.of(List.of(pulse, rate, awake)))),
            encounter -> java.util.Optional.empty(),
            Clock.fixed(NOW, ZoneOffset.UTC));

    assertThat(findings(mapped, "DPL", "\"valueInteger\": 1"))
        .containsExactly(
            new Finding(
                new FindingKey("pulse-amplitude", "dorsalis-pedis", Side.LEFT),
                new FindingValue.Grade(1)));
    assertThat(findings(mapped, "HF", "\"valueQuantity\": {\"value\": 71, \"unit\": \"Schlaege\"}"))
        .containsExactly(Finding.quantity("heart-rate", "71", "/min"));
    assertThat(findings(mapped, "VIG", "\"valueString\": \"Wach\""))
        .containsExactly(Finding.coded("consciousness", "alert"));
  }

  private static CodeRow row(
      String code,
      String finding,
      @Nullable String site,
      @Nullable Side side,
      Map<String, String> values,
      Map<String, String> units) {
    return new CodeRow("http/feed", "urn:gateway", code, finding, site, side, null, values, units);
  }

  private static List<Finding> findings(BundleReader reader, String code, String value) {
    var json =
        """
        {"resourceType": "Observation", "status": "final",
         "code": {"coding": [{"system": "urn:gateway", "code": "%s"}]},
         "subject": {"identifier": {"value": "P-1"}}, "encounter": {"identifier": {"value": "V-1"}},
         "effectiveDateTime": "2031-03-02T05:00:00Z", %s}
        """
            .formatted(code, value);
    var read =
        reader.read(
            FHIR.newJsonParser().parseResource(Observation.class, json),
            null,
            new Reporter("feed", "http/feed"));
    assertThat(read.faults).isEmpty();
    return read.assessments.get(0).findings();
  }

  @Test
  void shouldBeTheSameAssessmentWhenSentAgainAndALaterRevisionWhenCorrected() {
    var first = read(identified("final", "2031-03-02T05:01:00Z", "36.5"));
    var again = read(identified("final", "2031-03-02T05:01:00Z", "36.5"));
    var corrected = read(identified("corrected", "2031-03-02T05:20:00Z", "38.5"));
    var withdrawn = read(identified("entered-in-error", "2031-03-02T05:20:00Z", "38.5"));
    assertThat(again.assessments).isEqualTo(first.assessments);
    assertThat(only(corrected).id()).isEqualTo(only(first).id());
    assertThat(only(corrected).revision()).isGreaterThan(only(first).revision());
    assertThat(only(corrected).status()).isEqualTo(Assessment.Status.AMENDED);
    assertThat(only(withdrawn).revision()).isGreaterThan(only(corrected).revision());
    assertThat(only(withdrawn).retracted()).isTrue();
  }

  private static Assessment only(Converted converted) {
    assertThat(converted.faults).isEmpty();
    assertThat(converted.assessments).hasSize(1);
    return converted.assessments.get(0);
  }

  private Converted read(Observation observation) {
    return reader.read(observation, null, new Reporter("feed", "http/feed"));
  }

  private static Observation identified(String status, String issued, String value) {
    var observation = observation("8310-5", quantity(value, "Cel"));
    observation.setStatus(Observation.ObservationStatus.fromCode(status));
    observation.setIssued(java.util.Date.from(Instant.parse(issued)));
    observation.addIdentifier().setSystem("urn:example:charts").setValue("O-1");
    return observation;
  }

  private static String quantity(String value, String unit) {
    return """
        "valueQuantity": {"value": %s, "system": "http://unitsofmeasure.org", "code": "%s"}
        """
        .formatted(value, unit);
  }

  private static Observation observation(String loinc, String rest) {
    return FHIR.newJsonParser()
        .parseResource(
            Observation.class,
            """
            {"resourceType": "Observation", "status": "final",
             "code": {"coding": [{"system": "http://loinc.org", "code": "%s"}]},
             "subject": {"reference": "Patient/P-1"}, "encounter": {"reference": "Encounter/V-1"},
             "effectiveDateTime": "2031-03-02T05:00:00Z", %s}
            """
                .formatted(loinc, rest));
  }
}
