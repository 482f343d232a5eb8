package org.driftward.alerts.whole;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.awaitility.Awaitility.await;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.security.TestSecurity;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.TestClock;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.store.Quarantine;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Alerts from the stream to the answer over HTTP and back to the stream: real Kafka, real SQL. */
@QuarkusTest
@QuarkusTestResource(RealDatabase.class)
@Timeout(120)
@TestSecurity(user = "c.two", roles = AccountRole.CHARGE, augmentors = SeesWardA.class)
class AlertsWholeTest {

  private static final Duration PATIENCE = Duration.ofSeconds(60);

  @Inject KafkaAccess access;
  @Inject Broker broker;
  @Inject EpisodeDesk desk;
  @Inject Clock clock;
  @Inject Quarantine quarantine;

  @Test
  void shouldCarryAPictureToAnAnswerAndTheAnswerToTheStream() {
    var episode = opened("V-1", "ward-a");

    var answer = post(episode, "acknowledge", "{\"note\":\"on my way\",\"seenVersion\":1}");

    assertThat(answer.statusCode()).isEqualTo(200);
    var json = answer.jsonPath();
    assertThat(json.getString("state")).isEqualTo("acknowledged");
    assertThat(json.getString("level")).isEqualTo("high");
    assertThat(json.getString("owner")).isEqualTo("c.two");
    assertThat(json.getString("ownerName")).isEqualTo("Charge Two");
    assertThat(json.getList("reasons")).containsExactly("NEWS2 8 at 12:00 (7 or more)");
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () ->
                assertThat(changes("V-1"))
                    .extracting(EpisodeChange::kind, EpisodeChange::by)
                    .containsExactly(tuple("opened", "driftward"), tuple("acknowledged", "c.two")));
    assertThat(changes("V-1")).isEqualTo(desk.story(episode.id()));
  }

  @Test
  void shouldTellTheStoryAndListOnlyOwnWards() {
    var mine = opened("V-2", "ward-a");
    var others = opened("V-3", "ward-b");

    var list = given().get("/api/episodes?state=open&state=acknowledged").jsonPath();
    assertThat(list.getList("encounter")).contains("V-2").doesNotContain("V-3");
    assertThat(given().get("/api/episodes?ward=ward-b").statusCode()).isEqualTo(403);
    assertThat(given().get("/api/episodes?level=loud").statusCode()).isEqualTo(400);

    JsonPath story = given().get("/api/episodes/" + mine.id()).jsonPath();
    assertThat(story.getString("episode.id")).isEqualTo(mine.id());
    assertThat(story.getList("story.kind")).containsExactly("opened");
    assertThat(given().get("/api/episodes/" + others.id()).statusCode()).isEqualTo(403);
    assertThat(post(others, "acknowledge", "{}").statusCode()).isEqualTo(403);
    assertThat(given().get("/api/episodes/E-none-1").statusCode()).isEqualTo(404);
  }

  @Test
  void shouldAnswerAConflictWithTheEpisodeAsItIs() {
    var episode = opened("V-4", "ward-a");
    assertThat(post(episode, "attend", "{}").statusCode()).isEqualTo(200);

    var late = post(episode, "acknowledge", "{\"seenVersion\":1}");

    assertThat(late.statusCode()).isEqualTo(409);
    assertThat(late.contentType()).startsWith("application/problem+json");
    assertThat(late.jsonPath().getString("type")).isEqualTo("/problems/no-longer-applies");
    assertThat(late.jsonPath().getString("episode.state")).isEqualTo("attended");
  }

  @Test
  void shouldAnswerWhatIsMissing() {
    var episode = opened("V-5", "ward-a");

    var close = post(episode, "hold", "{\"until\":\"2026-01-05T13:00:00Z\"}");
    assertThat(close.statusCode()).isEqualTo(400);
    assertThat(close.jsonPath().getString("faults[0].pointer")).isEqualTo("/reason");
    assertThat(post(episode, "sing", "{}").statusCode()).isEqualTo(404);
    assertThat(post(episode, "attend", "{\"until\":\"soon\"}").statusCode()).isEqualTo(400);
    assertThat(post(episode, "attend", "{oops").statusCode()).isEqualTo(400);
  }

  @Test
  void shouldClimbByTheClockAlone() {
    var episode = opened("V-6", "ward-a");

    ((TestClock) clock).set(episode.due());

    await()
        .atMost(PATIENCE)
        .untilAsserted(() -> assertThat(desk.find(episode.id()).orElseThrow().rung()).isEqualTo(1));
  }

  @Test
  void shouldSignACarePlanAndSendIt() {
    opened("V-7", "ward-a");
    var until = clock.instant().plus(Duration.ofHours(24));

    var signed =
        plan(
            "V-7",
            "{\"oxygenScale\":2,\"populations\":[\"pregnant\"],\"reason\":\"agreed\",\"until\":\""
                + until
                + "\"}");

    assertThat(signed.statusCode()).isEqualTo(200);
    assertThat(signed.jsonPath().getInt("version")).isEqualTo(1);
    assertThat(signed.jsonPath().getString("signedBy")).isEqualTo("c.two");
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () ->
                assertThat(plans("V-7"))
                    .singleElement()
                    .satisfies(
                        plan -> {
                          assertThat(plan.oxygenScale()).isEqualTo(2);
                          assertThat(plan.populations()).containsExactly("pregnant");
                        }));
  }

  @Test
  void shouldRefuseACarePlanThatLocalPolicyDoesNotAllow() {
    opened("V-8", "ward-a");
    var until = clock.instant().plus(Duration.ofHours(1));
    var rest = "\"reason\":\"agreed\",\"until\":\"" + until + "\"}";

    assertThat(plan("V-8", "{\"reason\":\"agreed\"}").statusCode()).isEqualTo(400);
    assertThat(plan("V-8", "{\"oxygenScale\":3," + rest).statusCode()).isEqualTo(400);
    assertThat(plan("V-8", "{\"limits\":[{\"code\":\"mood\",\"low\":1}]," + rest).statusCode())
        .isEqualTo(400);
    assertThat(plan("V-8", "{\"limits\":[{\"code\":\"heart-rate\"}]," + rest).statusCode())
        .isEqualTo(400);
    assertThat(plan("V-8", "{\"populations\":[\"pregnent\"]," + rest).statusCode()).isEqualTo(400);
    assertThat(plan("V-8", "{\"newBaseline\":\"" + until + "\"," + rest).statusCode())
        .isEqualTo(400);
    assertThat(plan("V-none", "{" + rest).statusCode()).isEqualTo(404);
  }

  @Test
  @TestSecurity(user = "n.one", roles = AccountRole.BEDSIDE, augmentors = SeesWardA.class)
  void shouldLetABedsideNurseWorryButNotSignOrClose() {
    var episode = opened("V-9", "ward-a");

    var worried =
        given()
            .contentType(ContentType.JSON)
            .body("{\"note\":\"grey and clammy\"}")
            .post("/api/encounters/V-9/worry");

    assertThat(worried.statusCode()).isEqualTo(200);
    assertThat(worried.jsonPath().getList("triggers.rule")).contains("worry");
    assertThat(worried.jsonPath().<Object>getList("told")).as("nobody was reached").isEmpty();
    assertThat(plan("V-9", "{}").statusCode()).isEqualTo(403);
    assertThat(post(episode, "close", "{\"reason\":\"fine\"}").statusCode()).isEqualTo(403);
    assertThat(given().get("/api/journal").statusCode()).isEqualTo(403);
  }

  @Test
  @TestSecurity(user = "m.four", roles = AccountRole.MANAGER, augmentors = SeesWardA.class)
  void shouldLetAManagerReadAndCheckTheJournal() {
    opened("V-10", "ward-a");

    var entries = given().get("/api/journal?after=0&limit=2").jsonPath();
    var check = given().get("/api/journal/check").jsonPath();

    assertThat(entries.getList("sequence")).hasSizeBetween(1, 2);
    assertThat(check.getBoolean("sound")).isTrue();
    assertThat(check.getString("head")).hasSize(64);
    assertThat(given().get("/api/journal?limit=5000").statusCode()).isEqualTo(400);
  }

  @Test
  @TestSecurity(user = "m.four", roles = AccountRole.MANAGER, augmentors = SeesWardA.class)
  void shouldTakeEventsAndSayThatThisHouseKeepsNoHistory() {
    var arrest =
        "{\"id\":\"X-1\",\"kind\":\"arrest\",\"ward\":\"ward-a\",\"encounter\":\"V-1\",\"at\":\""
            + RunningHouse.START.minusSeconds(60)
            + "\"}";
    var elsewhere = arrest.replace("ward-a", "ward-b");
    var json = given().contentType(ContentType.JSON);

    var taken = json.body(arrest).post("/api/audit/events");
    assertThat(taken.statusCode()).as(taken.asString()).isEqualTo(201);
    assertThat(json.body(elsewhere).post("/api/audit/events").statusCode()).isEqualTo(403);
    assertThat(json.body("{}").post("/api/audit/events").statusCode()).isEqualTo(400);
    assertThat(given().get("/api/audit/events?ward=ward-a").jsonPath().getList("kind"))
        .containsExactly("arrest");
    assertThat(given().delete("/api/audit/events/X-1?reason=mistaken").statusCode()).isEqualTo(204);
    assertThat(given().delete("/api/audit/events/X-1?reason=again").statusCode()).isEqualTo(404);
    assertThat(given().get("/api/audit?hour=25").statusCode()).isEqualTo(400);
    assertThat(given().get("/api/audit").statusCode()).isEqualTo(503);
    assertThat(given().get("/api/journal/export").asString().lines()).isNotEmpty();
  }

  @Test
  void shouldPutPoisonAsideAndGoOn() {
    send(Topic.SNAPSHOTS, "V-11", "{\"encounter\":".getBytes(StandardCharsets.UTF_8));

    opened("V-11", "ward-a");

    await().atMost(PATIENCE).until(() -> quarantine.counts().equals(Map.of("alerts-reader", 1L)));
  }

  private Episode opened(String encounter, String ward) {
    var admitted = RunningHouse.START.minus(Duration.ofDays(1));
    var stay =
        new Encounter(
            encounter,
            new Patient("P-" + encounter, null, null, null),
            List.of(new Stay(ward, "1", admitted)),
            admitted,
            null,
            null,
            1);
    send(Topic.ENCOUNTERS, encounter, JsonFormat.of(Encounter.class).write(stay));
    var picture = Pictures.of(encounter, RunningHouse.START).score(8).build();
    send(Topic.SNAPSHOTS, encounter, JsonFormat.of(Snapshot.class).write(picture));
    await()
        .atMost(PATIENCE)
        .until(() -> desk.running(encounter).filter(e -> e.ward().equals(ward)).isPresent());
    return desk.running(encounter).orElseThrow();
  }

  private void send(Topic topic, String key, byte[] value) {
    try (var producer =
        new KafkaProducer<>(
            Map.<String, Object>copyOf(access.settings()),
            new StringSerializer(),
            new ByteArraySerializer())) {
      producer.send(new ProducerRecord<>(topic.topic(), key, value)).get();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  private List<EpisodeChange> changes(String encounter) {
    return broker.read(Topic.EPISODES).stream()
        .filter(change -> change.key().equals(encounter))
        .map(change -> JsonFormat.of(EpisodeChange.class).read(change.value()))
        .toList();
  }

  private List<CarePlan> plans(String encounter) {
    return broker.read(Topic.CARE_PLANS).stream()
        .filter(plan -> plan.key().equals(encounter))
        .map(plan -> JsonFormat.of(CarePlan.class).read(plan.value()))
        .toList();
  }

  private static Response post(Episode episode, String action, String body) {
    return given()
        .contentType(ContentType.JSON)
        .body(body)
        .post("/api/episodes/" + episode.id() + "/" + action);
  }

  private static Response plan(String encounter, String body) {
    return given()
        .contentType(ContentType.JSON)
        .body(body)
        .put("/api/encounters/" + encounter + "/care-plan");
  }
}
