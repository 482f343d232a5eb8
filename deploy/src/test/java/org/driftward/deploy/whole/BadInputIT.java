package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.driftward.deploy.whole.Caller.Answer;
import org.driftward.ingest.contract.Problem;
import org.junit.jupiter.api.Test;

/** What is wrong is answered clearly, changes nothing, and leaves no patient in the log. */
@WithRunningApp
class BadInputIT {

  private static final String NAME = "Windermarch, Isolde";

  private final RunningApp app;
  private final Ward ward;

  BadInputIT(RunningApp app) {
    this.app = app;
    this.ward = Ward.open(app, "birch");
    assertThat(ward.admit("V-2001", "1", NAME).status()).isEqualTo(200);
  }

  @Test
  void shouldRefuseMalformedJson() {
    expectRefusal(ward.send("{\"id\":\"A-2001\","), "", "malformed-json");
  }

  @Test
  void shouldRefuseAWrongUnit() {
    var fahrenheit = set().replace("\"Cel\"", "\"[degF]\"");

    expectRefusal(ward.send(fahrenheit), "/findings/6/unit", "wrong-unit");
  }

  @Test
  void shouldRefuseAnImpossibleValue() {
    var answer = ward.send(set().replace("\"value\":97", "\"value\":197"));

    expectRefusal(answer, "/findings/1/value", "out-of-range");
  }

  @Test
  void shouldRefuseAnUnknownEncounter() {
    expectRefusal(ward.send(set().replace("V-2001", "V-none")), "/encounter", "unknown-encounter");
  }

  @Test
  void shouldNameEveryFaultAndKeepNothing() {
    var twice = set().replace("\"value\":97", "\"value\":197").replace("\"/min\"", "\"/h\"");

    var answer = ward.send("[" + Sets.well("A-2003", "V-2001", Instant.now()) + "," + twice + "]");

    assertThat(answer.json().get("faults")).hasSizeGreaterThanOrEqualTo(3);
    assertThat(ward.history("V-2001").toString()).doesNotContain("A-2003");
  }

  @Test
  void shouldRefuseABodyThatIsTooLarge() {
    var answer = ward.send(" ".repeat(5 << 20) + set());

    assertThat(answer.status()).isEqualTo(413);
  }

  @Test
  void shouldAskWhoIsThere() {
    assertThat(app.asNobody().post("/api/assessments", set()).status()).isEqualTo(401);
    assertThat(app.asNobody().get("/api/wards/birch/board").status()).isEqualTo(401);
    assertThat(app.as("charge.birch", "a-wild-guess-at-it").get("/api/wards").status())
        .isEqualTo(401);
  }

  @Test
  void shouldKeepAWardToItsOwn() {
    var neighbour = Ward.open(app, "cedar").nurse();

    for (var path :
        List.of(
            "/api/wards/birch/board",
            "/api/wards/birch/stream",
            "/api/encounters/V-2001",
            "/api/encounters/V-2001/history")) {
      var answer = neighbour.get(path);
      assertThat(answer.status()).as(path).isEqualTo(403);
      assertThat(answer.body()).as(path).doesNotContain("Windermarch");
    }
    assertThat(neighbour.post("/api/assessments", set()).status()).isEqualTo(403);
  }

  @Test
  void shouldNameNoPatientInTheLog() {
    ward.send(set());
    ward.send(set().replace("\"value\":97", "\"value\":197"));
    ward.send("{\"patient\":\"" + NAME);
    ward.nurse().get("/api/encounters/V-2001");

    assertThat(app.written()).doesNotContain("Windermarch").doesNotContain("Isolde");
  }

  private static String set() {
    return Sets.well("A-2002", "V-2001", Instant.now().minusSeconds(5));
  }

  private static void expectRefusal(Answer answer, String pointer, String rule) {
    assertThat(answer.status()).as(answer.body()).isEqualTo(400);
    assertThat(answer.type()).startsWith(Problem.MEDIA_TYPE);
    assertThat(answer.json().get("faults"))
        .anySatisfy(
            fault -> {
              assertThat(fault.get("pointer").asText()).isEqualTo(pointer);
              assertThat(fault.get("rule").asText()).isEqualTo(rule);
            });
  }
}
