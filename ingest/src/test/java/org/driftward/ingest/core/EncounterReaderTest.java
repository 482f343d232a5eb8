package org.driftward.ingest.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.driftward.ingest.contract.EncounterChange.Put;
import org.driftward.ingest.contract.Patient;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EncounterReaderTest {

  private static final String WHOLE =
      """
      {"patient":{"id":"P-1","name":"Sample, One","birthDate":"1950-02-03","sex":"female"},
       "ward":"ward-a","bed":"1","admitted":"2026-01-05T08:00:00Z","discharged":null}
      """;

  @Test
  void shouldReadEveryFieldOfTheContract() {
    var result = read("V-1", WHOLE);

    assertThat(result.faults()).isEmpty();
    assertThat(result.put())
        .isEqualTo(
            new Put(
                "V-1",
                new Patient("P-1", "Sample, One", LocalDate.of(1950, 2, 3), Patient.Sex.FEMALE),
                "ward-a",
                "1",
                Request.NOW,
                Instant.parse("2026-01-05T08:00:00Z"),
                null));
  }

  @Test
  void shouldNameEveryMissingField() {
    assertThat(broken("V-1", "{}"))
        .containsExactly(
            "/patient missing-field", "/ward missing-field", "/admitted missing-field");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\0',
      value = {
        "'P-1'                  | 7                      | /patient/id wrong-type",
        "'1950-02-03'           | '3.2.1950'             | /patient/birthDate malformed-time",
        "'1950-02-03'           | '2026-01-07'           | /patient/birthDate out-of-range",
        "'1950-02-03'           | '1879-12-31'           | /patient/birthDate out-of-range",
        "'female'               | 'F'                    | /patient/sex unknown-word",
        "'ward-a'               | ''                     | /ward malformed-text",
        "'2026-01-05T08:00:00Z' | '2026-01-05T12:05:01Z' | /admitted in-the-future",
        "null                   | '2026-01-05T07:00:00Z' | /discharged discharged-before-admitted",
        "null                   | '2026-01-06T07:00:00Z' | /discharged in-the-future",
      })
  void shouldRefuseWhatCannotBe(String good, String bad, String expected) {
    var body = WHOLE.replace(good.replace('\'', '"'), bad.replace('\'', '"'));

    assertThat(broken("V-1", body)).containsExactly(expected);
  }

  @Test
  void shouldRefuseAnIdentifierThatNoSystemStores() {
    assertThat(broken("V\n1", WHOLE)).containsExactly(" malformed-text");
  }

  @Test
  void shouldRefuseABodyThatIsNoObject() {
    assertThat(broken("V-1", "[]")).containsExactly(" wrong-type");
  }

  private static List<String> broken(String id, String body) {
    return read(id, body).faults().stream()
        .map(fault -> fault.pointer() + " " + fault.rule())
        .toList();
  }

  private static EncounterReader.Result read(String id, String body) {
    return new EncounterReader(Request.LIMITS).read(id, Request.parse(body), Request.NOW);
  }
}
