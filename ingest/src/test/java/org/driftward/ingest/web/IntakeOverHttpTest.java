package org.driftward.ingest.web;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.security.TestSecurity;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.kafka.KafkaIntake;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Intake over real HTTP, on a real broker. */
@QuarkusTest
@Timeout(60)
@TestSecurity(user = "nurse-7", roles = AccountRole.BEDSIDE, augmentors = SeesWardA.class)
class IntakeOverHttpTest {

  @Inject Broker broker;
  @Inject AssessmentIntake intake;
  @Inject KafkaIntake part;

  @Test
  void shouldAcceptOneAssessment() {
    admit("V-1", "ward-a");

    var answer = post(assessment("A-1", "V-1", 80));

    assertThat(answer.statusCode()).isEqualTo(202);
    assertThat(answer.jsonPath().getList("accepted")).containsExactly("A-1");
    assertThat(kept("V-1"))
        .singleElement()
        .satisfies(
            assessment -> {
              assertThat(assessment.by()).isEqualTo("nurse-7");
              assertThat(assessment.recordedAt()).isEqualTo(RunningHouse.NOW);
            });
  }

  @Test
  void shouldAcceptAnArrayAndItsRepetition() {
    admit("V-2", "ward-a");
    var body = "[" + assessment("A-2", "V-2", 80) + "," + assessment("A-3", "V-2", 81) + "]";

    assertThat(post(body).jsonPath().getList("accepted")).containsExactly("A-2", "A-3");
    assertThat(post(body).statusCode()).isEqualTo(202);
  }

  @Test
  void shouldAnswerEveryFaultAndKeepTheExactBytes() {
    admit("V-3", "ward-a");
    var body = "[" + assessment("A-4", "V-3", 80) + ",  " + assessment("A-5", "V-3", 999) + ",{}]";

    var answer = post(body);

    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(answer.contentType()).startsWith("application/problem+json");
    assertThat(answer.jsonPath().getString("type")).isEqualTo("/problems/refused-input");
    assertThat(answer.jsonPath().getInt("status")).isEqualTo(400);
    assertThat(answer.jsonPath().getList("faults.pointer"))
        .contains("/1/findings/0/value", "/2/id", "/2/encounter");
    assertThat(kept("V-3")).isEmpty();
    assertThat(rejected()).anySatisfy(each -> assertThat(text(each)).isEqualTo(body));
  }

  @Test
  void shouldKeepMalformedJsonAndNotEchoIt() {
    var body = "{\"id\": \"A-6\", \"patient\": \"P-secret\" oops}";

    var answer = post(body);

    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(answer.jsonPath().getString("faults[0].rule")).isEqualTo("malformed-json");
    assertThat(answer.asString()).doesNotContain("P-secret").contains("line 1");
    assertThat(rejected()).anySatisfy(each -> assertThat(text(each)).isEqualTo(body));
  }

  @Test
  void shouldRefuseAnEmptyBody() {
    assertThat(post("").statusCode()).isEqualTo(400);
  }

  @Test
  void shouldNotShowAWardThatTheAccountDoesNotSee() {
    admit("V-4", "ward-b");

    var answer = post(assessment("A-7", "V-4", 999));

    assertThat(answer.statusCode()).isEqualTo(403);
    assertThat(answer.contentType()).startsWith("application/problem+json");
    assertThat(answer.asString()).doesNotContain("heart-rate");
    assertThat(kept("V-4")).isEmpty();
  }

  @Test
  void shouldRefuseAnUnknownEncounter() {
    var answer = post(assessment("A-8", "V-nowhere", 80));

    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(answer.jsonPath().getList("faults.rule")).containsExactly("unknown-encounter");
  }

  @Test
  void shouldTurnAwayABodyThatIsTooLarge() {
    var answer = post(" ".repeat((4 << 20) + 1));

    assertThat(answer.statusCode()).isEqualTo(413);
    assertThat(answer.contentType()).startsWith("application/problem+json");
  }

  @Test
  void shouldRefuseAnotherMediaType() {
    var answer = given().contentType("text/csv").body("a,b").post("/api/assessments");

    assertThat(answer.statusCode()).isEqualTo(415);
    assertThat(answer.contentType()).startsWith("application/problem+json");
  }

  @Test
  @TestSecurity(user = "manager-1", roles = AccountRole.MANAGER, augmentors = SeesWardA.class)
  void shouldForbidARoleThatDoesNotAssess() {
    assertThat(post(assessment("A-9", "V-1", 80)).statusCode()).isEqualTo(403);
  }

  @Test
  @TestSecurity(authorizationEnabled = true)
  void shouldNotLetAnybodyInWithoutCredentials() {
    assertThat(post(assessment("A-9", "V-1", 80)).statusCode()).isEqualTo(401);
  }

  @Test
  void shouldAskToRepeatWhileIntakeCannotKeepAnything() {
    admit("V-5", "ward-a");
    part.stop();
    try {
      var answer = post(assessment("A-10", "V-5", 80));

      assertThat(answer.statusCode()).isEqualTo(503);
      assertThat(answer.header("Retry-After")).isEqualTo("5");
      assertThat(answer.contentType()).startsWith("application/problem+json");
    } finally {
      part.start();
    }
  }

  @Test
  @TestSecurity(user = "charge-1", roles = AccountRole.CHARGE, augmentors = SeesWardA.class)
  void shouldAdmitAndMoveAPatient() {
    assertThat(put("V-6", "ward-a", "1").statusCode()).isEqualTo(200);
    var moved = put("V-6", "ward-b", "4");

    assertThat(moved.jsonPath().getList("accepted")).containsExactly("V-6");
    var newest = encounters("V-6").get(1);
    assertThat(newest.ward()).isEqualTo("ward-b");
    assertThat(newest.stays()).hasSize(2);
    assertThat(newest.patient().sex()).isEqualTo(Patient.Sex.FEMALE);
  }

  @Test
  @TestSecurity(user = "charge-1", roles = AccountRole.CHARGE, augmentors = SeesWardA.class)
  void shouldNotPullAPatientOutOfAWardThatTheAccountDoesNotSee() {
    admit("V-7", "ward-b");

    assertThat(put("V-7", "ward-a", "1").statusCode()).isEqualTo(403);
    assertThat(put("V-8", "ward-b", "1").statusCode()).isEqualTo(403);
  }

  @Test
  @TestSecurity(user = "charge-1", roles = AccountRole.CHARGE, augmentors = SeesWardA.class)
  void shouldAnswerEveryFaultOfAnEncounter() {
    var answer =
        given().contentType(ContentType.JSON).body("{\"ward\":7}").put("/api/encounters/V-9");

    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(answer.jsonPath().getList("faults.pointer"))
        .containsExactly("/patient", "/admitted", "/ward");
    assertThat(rejected())
        .anySatisfy(each -> assertThat(each.target()).isEqualTo("PUT /api/encounters/V-9"));
  }

  @Test
  void shouldDescribeBothCallsInOpenApi() {
    var described = JsonPath.from(given().get("/q/openapi?format=json").asString());

    assertThat(described.<String, Object>getMap("paths"))
        .containsKeys("/api/assessments", "/api/encounters/{id}");
  }

  @Test
  void shouldCountWhatItAcceptsAndRefuses() {
    admit("V-10", "ward-a");
    post(assessment("A-11", "V-10", 80));
    post("{}");

    assertThat(given().get("/q/metrics").asString())
        .contains("driftward_assessments_accepted_total{source=\"bedside\"}")
        .contains("driftward_assessments_refused_total{source=\"bedside\"}")
        .contains("driftward_intake_oversized_total{source=\"bedside\"}");
  }

  private void admit(String encounter, String ward) {
    var admitted = RunningHouse.NOW.minusSeconds(7200);
    var patient = new Patient("P-" + encounter, "Sample, One", null, null);
    var stays = List.of(new Stay(ward, "1", admitted));
    intake
        .put("test", new Encounter(encounter, patient, stays, admitted, null, null, 1))
        .toCompletableFuture()
        .join();
  }

  private static Response post(String body) {
    return given().contentType(ContentType.JSON).body(body).post("/api/assessments");
  }

  private static Response put(String encounter, String ward, String bed) {
    var body =
        """
        {"patient":{"id":"P-1","name":"Sample, One","birthDate":"1950-02-03","sex":"female"},
         "ward":"%s","bed":"%s","admitted":"2026-01-05T10:00:00Z"}
        """
            .formatted(ward, bed);
    return given().contentType(ContentType.JSON).body(body).put("/api/encounters/" + encounter);
  }

  private static String assessment(String id, String encounter, int heartRate) {
    return """
        {"id":"%s","encounter":"%s","patient":"P-%s","takenAt":"2026-01-05T11:00:00Z",
         "findings":[{"code":"heart-rate","value":%d,"unit":"/min"}]}
        """
        .formatted(id, encounter, encounter, heartRate)
        .strip();
  }

  private List<Assessment> kept(String encounter) {
    return broker.read(Topic.ASSESSMENTS).stream()
        .filter(each -> each.key().equals(encounter))
        .map(each -> JsonFormat.of(Assessment.class).read(each.value()))
        .toList();
  }

  private List<Encounter> encounters(String encounter) {
    return broker.read(Topic.ENCOUNTERS).stream()
        .filter(each -> each.key().equals(encounter))
        .map(each -> JsonFormat.of(Encounter.class).read(each.value()))
        .toList();
  }

  private List<Rejection> rejected() {
    return broker.read(Topic.REJECTED).stream()
        .map(each -> JsonFormat.of(Rejection.class).read(each.value()))
        .toList();
  }

  private static String text(Rejection rejection) {
    return new String(rejection.bytes(), StandardCharsets.UTF_8);
  }
}
