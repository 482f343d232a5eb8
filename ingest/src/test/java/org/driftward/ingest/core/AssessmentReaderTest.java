package org.driftward.ingest.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AssessmentReaderTest {

  private static final String TEMPERATURE =
      "{\"code\":\"temperature\",\"value\":37.20,\"unit\":\"Cel\"}";

  @Test
  void shouldReadEveryFieldOfTheContract() {
    var request =
        Request.of(
            """
            {"id":"A-9","revision":2,"status":"amended","encounter":"V-1","patient":"P-1",
             "takenAt":"2026-01-05T12:10:00+02:00","recordedAt":"2026-01-05T10:12:00Z",
             "source":"monitor","by":"device-3","reason":"wrong arm",
             "findings":[{"code":"systolic-pressure","value":118,"unit":"mm[Hg]"},
                         {"code":"consciousness","coded":"alert"},
                         {"code":"gcs-eye","grade":4}],
             "unknown":{"ignored":true}}
            """);

    assertThat(request.broken()).isEmpty();
    assertThat(request.assessments())
        .containsExactly(
            new Assessment(
                "A-9",
                2,
                Status.AMENDED,
                "V-1",
                "P-1",
                Instant.parse("2026-01-05T10:10:00Z"),
                Instant.parse("2026-01-05T10:12:00Z"),
                Source.MONITOR,
                "device-3",
                "wrong arm",
                java.util.List.of(
                    Finding.quantity("systolic-pressure", "118", "mm[Hg]"),
                    Finding.coded("consciousness", "alert"),
                    Finding.grade("gcs-eye", 4))));
  }

  @Test
  void shouldFillInWhatASenderMayLeaveOut() {
    var assessment = Request.withFindings(TEMPERATURE).assessments().get(0);

    assertThat(assessment.revision()).isEqualTo(1);
    assertThat(assessment.status()).isEqualTo(Status.FINAL);
    assertThat(assessment.source()).isEqualTo(Source.BEDSIDE);
    assertThat(assessment.recordedAt()).isEqualTo(Request.NOW);
    assertThat(assessment.by()).isEqualTo("nurse-7");
    assertThat(assessment.reason()).isNull();
  }

  @Test
  void shouldKeepDecimalsExact() {
    var finding = Request.withFindings(TEMPERATURE).assessments().get(0).findings().get(0);

    assertThat(finding.value().plain()).isEqualTo("37.2");
  }

  @Test
  void shouldNameEveryMissingField() {
    assertThat(Request.of("{}").broken())
        .containsExactly(
            "/id missing-field",
            "/encounter missing-field",
            "/patient missing-field",
            "/takenAt missing-field");
  }

  @Test
  void shouldPointIntoAnArray() {
    var broken =
        Request.of(
                """
                [{"id":"A-1","encounter":"V-1","patient":"P-1","takenAt":"2026-01-05T11:00:00Z",
                  "findings":[%s]},
                 {"id":"A-2","encounter":"V-1","patient":"P-1","takenAt":"2026-01-05T11:00:00Z",
                  "findings":[%s,{"code":"heart-rate","value":80}]},
                 7]
                """
                    .formatted(TEMPERATURE, TEMPERATURE))
            .broken();

    assertThat(broken).containsExactly("/1/findings/1/unit missing-field", "/2 wrong-type");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'\"id\":7'                      | /id wrong-type",
        "'\"id\":\" A\"'                 | /id malformed-text",
        "'\"id\":\"\"'                   | /id malformed-text",
        "'\"id\":\"a\\u0000b\"'          | /id malformed-text",
        "'\"id\":\"a\\ud800b\"'          | /id malformed-text",
        "'\"revision\":\"1\"'            | /revision wrong-type",
        "'\"revision\":1.5'              | /revision wrong-type",
        "'\"revision\":0'                | /revision revision-too-low",
        "'\"revision\":1e999999999'      | /revision malformed-number",
        "'\"status\":\"FINAL\"'          | /status unknown-word",
        "'\"takenAt\":\"2026-01-05\"'    | /takenAt malformed-time",
        "'\"takenAt\":\"2026-01-05T11:00:00\"' | /takenAt malformed-time",
        "'\"takenAt\":1767610800'        | /takenAt wrong-type",
        "'\"source\":\"fax\"'            | /source unknown-word",
        "'\"by\":[]'                     | /by wrong-type",
        "'\"findings\":{}'               | /findings wrong-type",
      })
  void shouldRefuseAFieldOfAnotherShape(String field, String expected) {
    var name = field.substring(1, field.indexOf('"', 1));
    var json =
        """
        {"id":"A-1","encounter":"V-1","patient":"P-1","takenAt":"2026-01-05T11:00:00Z",
         "revision":1,"status":"final","source":"bedside","by":"x","findings":[%s]}
        """
            .formatted(TEMPERATURE)
            .replaceFirst(
                "\"" + name + "\":(\\[[^]]*]|\"[^\"]*\"|\\d+)",
                java.util.regex.Matcher.quoteReplacement(field));

    assertThat(Request.of(json).broken()).containsExactly(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "{}                                                    | /code missing-field",
        "{\"code\":\"temperature\"}                            | missing-field",
        "{\"code\":\"temperature\",\"value\":37}               | /unit missing-field",
        "{\"code\":\"temperature\",\"value\":37,\"grade\":1,\"unit\":\"Cel\"}     | wrong-type",
        "{\"code\":\"temperature\",\"value\":\"37\",\"unit\":\"Cel\"} | /value wrong-type",
        "{\"code\":\"temperature\",\"value\":1e-400,\"unit\":\"Cel\"} | /value malformed-number",
        "{\"code\":\"gcs-eye\",\"grade\":2.5}                  | /grade wrong-type",
        "{\"code\":\"gcs-eye\",\"grade\":99999999999}          | /grade wrong-type",
        "{\"code\":\"consciousness\",\"coded\":true}           | /coded wrong-type",
        "{\"code\":\"temperature\",\"side\":\"up\",\"value\":37,\"unit\":\"Cel\"} "
            + "| /side unknown-word",
        "[]                                                    | wrong-type",
      })
  void shouldRefuseAFindingOfAnotherShape(String finding, String expected) {
    var broken = Request.withFindings(TEMPERATURE + "," + finding).broken();

    var separator = expected.startsWith("/") ? "" : " ";
    assertThat(broken).contains("/findings/1" + separator + expected);
  }

  @Test
  void shouldNotTakeMoreAssessmentsThanTheLimit() {
    assertThat(Request.of("[1,2,3,4]").broken()).containsExactly(" too-many");
  }

  @Test
  void shouldRefuseAnEmptyArray() {
    assertThat(Request.of("[]").broken()).containsExactly(" missing-field");
  }

  @Test
  void shouldBoundTheAnswerToAHostileRequest() {
    var findings = "{},".repeat(Faults.MOST) + "{}";

    var faults = Request.withFindings(findings).faults();

    assertThat(faults).hasSizeLessThan(2 * Faults.MOST);
    assertThat(faults).last().satisfies(last -> assertThat(last.rule()).isEqualTo("too-many"));
  }

  @Test
  void shouldKeepNumbersThatNoMeasurementHasOutOfMemory() {
    assertThat(org.driftward.ingest.contract.FindingValue.Quantity.fits(new BigDecimal("1e99999")))
        .isFalse();
  }
}
