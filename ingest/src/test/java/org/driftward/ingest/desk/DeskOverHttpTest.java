package org.driftward.ingest.desk;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.security.TestSecurity;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.CodeDesk;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.IntakeDesk;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.IntakeDesk.State;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.web.RunningHouse;
import org.driftward.ingest.web.SeesWardA;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Files and mending over real HTTP, with every part running on a real broker and database. */
@QuarkusTest
@Timeout(90)
@TestSecurity(user = "feeds", roles = AccountRole.INTEGRATION, augmentors = SeesWardA.class)
class DeskOverHttpTest {

  private static final Duration PATIENCE = Duration.ofSeconds(40);
  private static final Sight ENGINEER = new Sight("engineer", WardScope.EVERY_WARD);
  private static final String HEADER = "encounter,patient,takenAt,heart-rate [/min]\r\n";

  @Inject Broker broker;
  @Inject AssessmentIntake intake;
  @Inject IntakeDesk desk;
  @Inject CodeDesk codes;

  @Test
  void shouldBringInAFileInPartsAndSayHowFarItIs() {
    admit("V-f1");
    var file = HEADER + row("V-f1", 80) + row("V-f1", 999) + row("V-f1", 82);

    var begun =
        given()
            .contentType("text/csv")
            .header("Upload-Complete", "?0")
            .header("Upload-Length", file.length())
            .queryParam("name", "night.csv")
            .body(file.substring(0, 70))
            .post("/api/imports");

    assertThat(begun.statusCode()).as(begun.asString()).isEqualTo(202);
    assertThat(begun.header("Upload-Offset")).isEqualTo("70");
    var at = begun.header("Location").substring(begun.header("Location").indexOf("/api"));
    assertThat(patch(at, 90, "x", "?0").statusCode()).isEqualTo(409);
    assertThat(patch(at, 90, "x", "?0").header("Upload-Offset")).isEqualTo("70");
    assertThat(patch(at, 70, file.substring(70), "?1").statusCode()).isEqualTo(202);

    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () -> assertThat(given().get(at).jsonPath().getString("state")).isEqualTo("finished"));
    var progress = given().get(at).jsonPath();
    assertThat(progress.getInt("accepted")).isEqualTo(2);
    assertThat(progress.getInt("rejected")).isEqualTo(1);
    assertThat(progress.getString("name")).isEqualTo("night.csv");
    assertThat(progress.getLong("length")).isEqualTo(file.length());
    var rejected = given().accept("application/json").get(at + "/rejected").jsonPath();
    assertThat(rejected.getList("line")).containsExactly(3);
    assertThat(given().accept("text/csv").get(at + "/rejected").asString())
        .startsWith("line,rules,reasons,row\r\n3,out-of-range,");
    assertThat(kept("V-f1")).hasSize(2);
  }

  @Test
  void shouldBringAWholeFileInWithOneCallHoweverOftenItIsRepeated() {
    admit("V-f2");
    var file = HEADER + row("V-f2", 80);

    var first = given().contentType("text/csv").body(file).post("/api/imports");
    var again = given().contentType("text/csv").body(file).post("/api/imports");

    assertThat(again.jsonPath().getString("id")).isEqualTo(first.jsonPath().getString("id"));
    await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept("V-f2")).hasSize(1));
  }

  @Test
  void shouldOfferItsHeaderAndTakeMappings() {
    assertThat(given().get("/api/imports/template").asString()).startsWith("id,revision,status,");
    assertThat(putMapping("{columns: {Case: encounter}}").statusCode()).isEqualTo(204);
    assertThat(putMapping("{colums: {}}").statusCode()).isEqualTo(400);
    assertThat(given().get("/api/imports/mappings").jsonPath().getList("")).contains("theirs");
    assertThat(
            given()
                .contentType("text/csv")
                .queryParam("mapping", "nobodys")
                .body("a")
                .post("/api/imports")
                .statusCode())
        .isEqualTo(400);
  }

  @Test
  @TestSecurity(user = "nurse", roles = AccountRole.BEDSIDE, augmentors = SeesWardA.class)
  void shouldForbidARoleThatDoesNotIntegrate() {
    assertThat(given().contentType("text/csv").body("a").post("/api/imports").statusCode())
        .isEqualTo(403);
  }

  @Test
  @TestSecurity(user = "mender", roles = AccountRole.ADMIN, augmentors = SeesWardA.class)
  void shouldMendARefusalAndReplayItThroughTheGateThatRefusedIt() {
    admit("V-f3");
    var body = assessment("A-f3", "V-f3", 999);
    given().contentType("application/json").body(body).post("/api/assessments");

    await()
        .atMost(PATIENCE)
        .untilAsserted(() -> assertThat(mine()).extracting(IntakeDesk.Line::size).hasSize(1));
    var refusal = mine().get(0).id();
    assertThat(desk.refusal(refusal, ENGINEER).orElseThrow().bytes())
        .isEqualTo(Bytes.of(body.getBytes(UTF_8)));
    var mended = Bytes.of(body.replace("999", "99").getBytes(UTF_8));
    assertThat(desk.replay(refusal, mended, ENGINEER)).isTrue();

    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () ->
                assertThat(desk.refusal(refusal, ENGINEER).orElseThrow().line().state())
                    .isEqualTo(State.ACCEPTED));
    assertThat(kept("V-f3")).extracting(Assessment::id).containsExactly("A-f3");
    assertThat(desk.feeds())
        .anySatisfy(
            feed -> {
              assertThat(feed.origin()).isEqualTo("http/mender");
              assertThat(feed.refused()).isEqualTo(1);
            });
  }

  @Test
  @TestSecurity(user = "gateway", roles = AccountRole.ADMIN, augmentors = SeesWardA.class)
  void shouldBringInWhatWasHeldOnceSomebodySaysWhatItsCodeMeans() {
    admit("V-f4");
    var observation =
        """
        {"resourceType": "Observation", "status": "final",
         "code": {"coding": [{"system": "urn:gateway", "code": "HF", "display": "Herzfrequenz"}]},
         "subject": {"identifier": {"value": "P-V-f4"}},
         "encounter": {"identifier": {"value": "V-f4"}},
         "effectiveDateTime": "2026-01-05T11:00:00Z",
         "valueQuantity": {"value": 71, "unit": "Schlaege"}}
        """;
    var sent =
        given().contentType("application/fhir+json").body(observation).post("/fhir/Observation");
    assertThat(sent.statusCode()).as(sent.asString()).isEqualTo(201);
    assertThat(kept("V-f4")).isEmpty();
    var gateway = new Sight("gateway", WardScope.of(Set.of("ward-a")));

    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () ->
                assertThat(codes.unmapped(gateway))
                    .extracting(CodeDesk.Seen::text)
                    .containsExactly("Herzfrequenz"));
    var code = codes.unmapped(gateway).get(0).id();
    var meant =
        new CodeDesk.Meant(
            false, "heart-rate", null, null, null, Map.of(), Map.of("Schlaege", "/min"));
    assertThat(codes.map(code, meant, gateway)).isEmpty();
    assertThat(codes.replay(code, gateway)).isEqualTo(1);

    await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept("V-f4")).hasSize(1));
    assertThat(kept("V-f4").get(0).findings())
        .containsExactly(Finding.quantity("heart-rate", "71", "/min"));
    await()
        .atMost(PATIENCE)
        .untilAsserted(() -> assertThat(codes.open(code, gateway).orElseThrow().held()).isZero());
    assertThat(codes.unmapped(gateway)).isEmpty();
  }

  private List<IntakeDesk.Line> mine() {
    return desk.refusals(Filter.OPEN, new Sight("mender", WardScope.NONE)).lines();
  }

  private static Response patch(String at, long offset, String part, String complete) {
    return given()
        .contentType("application/partial-upload")
        .header("Upload-Offset", offset)
        .header("Upload-Complete", complete)
        .body(part.getBytes(UTF_8))
        .patch(at);
  }

  private static Response putMapping(String text) {
    return given().contentType("text/plain").body(text).put("/api/imports/mappings/theirs");
  }

  private void admit(String encounter) {
    var admitted = RunningHouse.NOW.minusSeconds(7200);
    var patient = new Patient("P-" + encounter, "Sample, One", null, null);
    intake
        .put(
            "test",
            new Encounter(
                encounter,
                patient,
                List.of(new Stay("ward-a", "1", admitted)),
                admitted,
                null,
                null,
                1))
        .toCompletableFuture()
        .join();
  }

  private static String row(String encounter, int heartRate) {
    return "%s,P-%s,2026-01-05T11:00:00Z,%d\r\n".formatted(encounter, encounter, heartRate);
  }

  private static String assessment(String id, String encounter, int heartRate) {
    return """
        {"id":"%s","encounter":"%s","patient":"P-%s","takenAt":"2026-01-05T11:00:00Z",
         "findings":[{"code":"heart-rate","value":%d,"unit":"/min"}]}
        """
        .formatted(id, encounter, encounter, heartRate);
  }

  private List<Assessment> kept(String encounter) {
    return broker.read(Topic.ASSESSMENTS).stream()
        .filter(each -> each.key().equals(encounter))
        .map(each -> JsonFormat.of(Assessment.class).read(each.value()))
        .toList();
  }
}
