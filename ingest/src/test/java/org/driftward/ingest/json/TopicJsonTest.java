package org.driftward.ingest.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.Stay;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The JSON of the topic contracts, letter for letter. */
class TopicJsonTest {

  private static final Instant AT = Instant.parse("2026-01-05T03:10:00Z");

  @Test
  void shouldWriteAnAssessmentAsTheContractShowsIt() {
    var assessment =
        new Assessment(
            "A-1",
            1,
            Assessment.Status.FINAL,
            "V-1",
            "P-1",
            AT,
            AT,
            Assessment.Source.BEDSIDE,
            "nurse-7",
            null,
            List.of(
                Finding.quantity("respiratory-rate", "22", "/min"),
                new Finding(
                    new FindingKey("pulse-amplitude", "dorsalis-pedis", Side.LEFT),
                    new FindingValue.Grade(1)),
                Finding.coded("consciousness", "alert")));

    assertThat(text(JsonFormat.of(Assessment.class).write(assessment)))
        .isEqualTo(
            """
            {"id":"A-1","revision":1,"status":"final","encounter":"V-1","patient":"P-1",\
            "takenAt":"2026-01-05T03:10:00Z","recordedAt":"2026-01-05T03:10:00Z",\
            "source":"bedside","by":"nurse-7","findings":[\
            {"code":"respiratory-rate","value":22,"unit":"/min"},\
            {"code":"pulse-amplitude","site":"dorsalis-pedis","side":"left","grade":1},\
            {"code":"consciousness","coded":"alert"}]}""");
  }

  @Test
  void shouldReadBackAnEncounter() {
    var encounter =
        new Encounter(
            "V-1",
            new Patient("P-1", "Sample, One", LocalDate.of(1950, 2, 3), Patient.Sex.UNKNOWN),
            List.of(new Stay("ward-a", null, AT), new Stay("ward-b", "7", AT.plusSeconds(60))),
            AT,
            AT.plusSeconds(120),
            "V-2",
            4);
    var format = JsonFormat.of(Encounter.class);

    assertThat(format.read(format.write(encounter))).isEqualTo(encounter);
  }

  @Test
  void shouldReadBackARejection() {
    var received =
        new Received("feed", Assessment.Source.HL7, "mllp", "text/plain", new byte[] {0, -1, 13});
    var rejection = Rejection.of("R-1", received, AT, List.of(new Fault("/0", "rule", "detail")));
    var format = JsonFormat.of(Rejection.class);

    assertThat(format.read(format.write(rejection))).isEqualTo(rejection);
    assertThat(format.read(format.write(rejection)).bytes()).containsExactly(0, -1, 13);
  }

  @Property(tries = 300)
  void shouldReadBackEveryFinding(@ForAll("findings") Finding finding) {
    var format = JsonFormat.of(Finding.class);

    assertThat(format.read(format.write(finding))).isEqualTo(finding);
  }

  @Test
  void shouldIgnoreFieldsItDoesNotKnow() {
    var read =
        JsonFormat.of(Finding.class)
            .read(bytes("{\"code\":\"x\",\"coded\":\"y\",\"later\":{\"a\":[1]}}"));

    assertThat(read).isEqualTo(Finding.coded("x", "y"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "null",
        "{",
        "[]",
        "{\"code\":\"x\"}",
        "{\"code\":\"x\",\"value\":1}",
        "{\"code\":\"x\",\"grade\":1,\"text\":\"secret\"}",
        "{\"code\":\"x\",\"side\":\"secret\",\"grade\":1}",
        "{\"code\":\"x\",\"coded\":\"y\"} {}",
      })
  void shouldSayWhereARecordIsBrokenAndNeverWhat(String json) {
    assertThatThrownBy(() -> JsonFormat.of(Finding.class).read(bytes(json)))
        .isInstanceOf(MalformedException.class)
        .hasMessageNotContaining("secret");
  }

  @Provide
  Arbitrary<Finding> findings() {
    var key =
        Combinators.combine(
                Arbitraries.strings().alpha().ofMinLength(1),
                Arbitraries.strings().alpha().ofMinLength(1).injectNull(0.5),
                Arbitraries.of(Side.class).injectNull(0.5))
            .as(FindingKey::new);
    var numbers =
        Arbitraries.bigDecimals()
            .between(new BigDecimal("-1000000"), new BigDecimal("1000000"))
            .ofScale(6);
    Arbitrary<FindingValue> value =
        Arbitraries.oneOf(
            numbers.map(number -> new FindingValue.Quantity(number, "mm[Hg]")),
            Arbitraries.integers().map(FindingValue.Grade::new),
            Arbitraries.strings().alpha().ofMaxLength(20).map(FindingValue.Coded::new),
            Arbitraries.strings()
                .ofMaxLength(200)
                .filter(TopicJsonTest::whole)
                .map(FindingValue.Text::new));
    return Combinators.combine(key, value).as(Finding::new);
  }

  private static boolean whole(String text) {
    return StandardCharsets.UTF_8.newEncoder().canEncode(text);
  }

  private static String text(byte[] json) {
    return new String(json, StandardCharsets.UTF_8);
  }

  private static byte[] bytes(String json) {
    return json.getBytes(StandardCharsets.UTF_8);
  }
}
