package org.driftward.ingest.core;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Ranges: the validation table in docs/clinical-basis.md (engineering choice). Units: HL7 FHIR R4
 * vital signs. The rules between findings: the same table.
 */
class IntakeRulesTest {

  private static final String RATE = "{\"code\":\"heart-rate\",\"value\":80,\"unit\":\"/min\"}";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\0',
      value = {
        "{'code':'aura','value':1,'unit':'1'}                           | /code unknown-code",
        "{'code':'heart-rate','site':'neck','value':80,'unit':'/min'}   | /site unknown-site",
        "{'code':'heart-rate','side':'left','value':80,'unit':'/min'}   | /side unknown-side",
        "{'code':'heart-rate','grade':2}                                |  wrong-kind",
        "{'code':'consciousness','text':'sleepy'}                       |  wrong-kind",
        "{'code':'heart-rate','value':80,'unit':'bpm'}                  | /unit wrong-unit",
        "{'code':'temperature','value':37,'unit':'C'}                   | /unit wrong-unit",
        "{'code':'systolic-pressure','value':120,'unit':'mmHg'}         | /unit wrong-unit",
        "{'code':'consciousness','coded':'sleepy'}                      | /coded unknown-option",
        "{'code':'respiratory-rate','value':-1,'unit':'/min'}           | /value out-of-range",
        "{'code':'respiratory-rate','value':100.1,'unit':'/min'}        | /value out-of-range",
        "{'code':'oxygen-saturation','value':101,'unit':'%'}            | /value out-of-range",
        "{'code':'inspired-oxygen-fraction','value':0.5,'unit':'%'}     | /value out-of-range",
        "{'code':'gcs-eye','grade':0}                                   | /grade out-of-range",
        "{'code':'gcs-motor','grade':7}                                 | /grade out-of-range",
      })
  void shouldRefuseWhatTheCatalogueDoesNotKnow(String finding, String expected) {
    var broken = Request.withFindings(RATE + "," + finding.replace('\'', '"')).broken();

    assertThat(broken).contains("/findings/1" + (expected.startsWith("/") ? "" : " ") + expected);
  }

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '\0',
      delimiter = '|',
      value = {
        "{'code':'respiratory-rate','value':0,'unit':'/min'}",
        "{'code':'respiratory-rate','value':100,'unit':'/min'}",
        "{'code':'oxygen-saturation','value':100,'unit':'%'}",
        "{'code':'temperature','value':20.0,'unit':'Cel'}",
        "{'code':'temperature','value':46,'unit':'Cel'}",
        "{'code':'gcs-motor','grade':6}",
      })
  void shouldTakeBothEndsOfARangeAndTheWorstValues(String finding) {
    assertThat(Request.withFindings(finding.replace('\'', '"')).broken()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"98.6,true", "70,true", "120,true", "69.9,false", "120.1,false"})
  void shouldAskForFahrenheitWhereATemperatureLooksLikeIt(String value, boolean asks) {
    var faults =
        Request.withFindings("{\"code\":\"temperature\",\"value\":" + value + ",\"unit\":\"Cel\"}")
            .faults();

    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).detail().contains("Fahrenheit?")).isEqualTo(asks);
  }

  @ParameterizedTest
  @CsvSource({
    "120,80,true",
    "120,119,true",
    "120,120,false",
    "80,120,false",
    "0,0,true",
  })
  void shouldRefuseADiastolicPressureNotBelowTheSystolic(
      String systolic, String diastolic, boolean taken) {
    var findings =
        "{\"code\":\"systolic-pressure\",\"value\":%s,\"unit\":\"mm[Hg]\"},"
            + "{\"code\":\"diastolic-pressure\",\"value\":%s,\"unit\":\"mm[Hg]\"}";

    var broken = Request.withFindings(findings.formatted(systolic, diastolic)).broken();

    assertThat(broken.isEmpty()).isEqualTo(taken);
    assertThat(broken).isSubsetOf("/findings/1/value contradiction");
  }

  @Test
  void shouldRefuseAirWithAnOxygenFlow() {
    var broken =
        Request.withFindings(
                """
                {"code":"inspired-oxygen","coded":"air"},
                {"code":"oxygen-flow","value":2,"unit":"L/min"},
                {"code":"inspired-oxygen-fraction","value":28,"unit":"%"}
                """)
            .broken();

    assertThat(broken)
        .containsExactly("/findings/1/value contradiction", "/findings/2/value contradiction");
  }

  @Test
  void shouldTakeAirWithoutFlow() {
    var broken =
        Request.withFindings(
                """
                {"code":"inspired-oxygen","coded":"air"},
                {"code":"oxygen-flow","value":0,"unit":"L/min"},
                {"code":"inspired-oxygen-fraction","value":21,"unit":"%"}
                """)
            .broken();

    assertThat(broken).isEmpty();
  }

  @Test
  void shouldRefuseTheSameFindingTwice() {
    assertThat(Request.withFindings(RATE + "," + RATE).broken())
        .containsExactly("/findings/1 duplicate-finding");
  }

  @Test
  void shouldListEveryFaultOfEveryAssessment() {
    var broken =
        Request.of(
                """
                [{"id":"A-1","encounter":"V-9","patient":"P-1","takenAt":"2026-01-05T13:00:00Z",
                  "findings":[{"code":"temperature","value":98.6,"unit":"Cel"},
                              {"code":"gcs-eye","grade":5}]},
                 {"id":"A-1","encounter":"V-1","patient":"P-2","takenAt":"2026-01-05T11:00:00Z",
                  "findings":[]}]
                """)
            .broken();

    assertThat(broken)
        .containsExactly(
            "/0/takenAt in-the-future",
            "/0/recordedAt recorded-before-taken",
            "/0/encounter unknown-encounter",
            "/0/findings/0/value out-of-range",
            "/0/findings/1/grade out-of-range",
            "/1/id duplicate-assessment",
            "/1/findings no-findings",
            "/1/patient other-patient");
  }

  @Test
  void shouldTakeTwoRevisionsOfOneAssessmentInOneRequest() {
    var assessment =
        """
        {"id":"A-1","revision":%d,"encounter":"V-1","patient":"P-1",
         "takenAt":"2026-01-05T11:00:00Z","findings":[%s]}
        """;

    var request =
        Request.of("[" + assessment.formatted(1, RATE) + "," + assessment.formatted(2, RATE) + "]");

    assertThat(request.broken()).isEmpty();
  }
}
