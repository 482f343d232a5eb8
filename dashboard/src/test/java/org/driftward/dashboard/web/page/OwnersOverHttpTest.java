package org.driftward.dashboard.web.page;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.change;
import static org.driftward.dashboard.Samples.encounter;

import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.sql.DataSource;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.WorryDesk;
import org.driftward.alerts.store.Intake;
import org.driftward.alerts.store.Intake.News;
import org.driftward.alerts.store.UnfitOwners;
import org.driftward.dashboard.account.StoredAccounts;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.dashboard.store.Batch;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.dashboard.web.api.DatabaseResource;
import org.driftward.ingest.contract.AccountRole;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Who may own an episode and whom an alarm has reached, over real HTTP, with real accounts in a
 * real database. What a clock does once a second in the running application the test does by hand.
 */
@QuarkusTest
@WithTestResource(DatabaseResource.class)
@Timeout(120)
class OwnersOverHttpTest {

  private static final String PASSWORD = "a password of the tests";

  @Inject ReadModel model;
  @Inject StoredAccounts accounts;
  @Inject DataSource database;
  @Inject WorryDesk worries;
  @Inject EpisodeDesk episodes;
  @Inject DeliveryDesk deliveries;
  @Inject Intake intake;
  @Inject UnfitOwners unfit;

  @BeforeEach
  void fill() throws SQLException {
    run(
        "DELETE FROM dashboard.account; DELETE FROM dashboard.sign_in_failure;"
            + " DELETE FROM dashboard.encounter; DELETE FROM dashboard.snapshot;"
            + " DELETE FROM dashboard.episode; DELETE FROM dashboard.episode_change;"
            + " DELETE FROM alerts.shift; DELETE FROM alerts.deadline;"
            + " DELETE FROM alerts.episode; DELETE FROM alerts.course");
    account("nurse", AccountRole.CHARGE, "W1");
    account("other", AccountRole.CHARGE, "W1");
    account("elsewhere", AccountRole.CHARGE, "W2");
    account("boss", AccountRole.MANAGER, "*");
    account("feed", AccountRole.INTEGRATION, "*");
    account("admin", AccountRole.ADMIN, "*");
  }

  @Test
  void shouldRefuseToHandOverToWhoeverCannotAnswerAndSayWhy() {
    var id = owned("V-61");

    refused(act("nurse", id, "hand-over", "{\"to\":\"ghost\"}"), "to has no account");
    refused(
        act("nurse", id, "hand-over", "{\"to\":\"elsewhere\"}"),
        "to may not open the pages of ward W1");
    refused(
        act("nurse", id, "hand-over", "{\"to\":\"boss\"}"),
        "to has no role that answers for patients");
    refused(
        act("nurse", id, "hand-over", "{\"to\":\"feed\"}"),
        "to has no role that answers for patients");
    var done = act("nurse", id, "hand-over", "{\"to\":\"other\"}");

    assertThat(done.statusCode()).isEqualTo(200);
    assertThat(done.jsonPath().getString("ownerName")).isEqualTo("Other of the tests");
  }

  @Test
  void shouldRefuseWhoeverIsNotOnDutyWhereTheWardKeepsShifts() {
    var id = owned("V-62");
    assertThat(shift("nurse", "{\"duty\":\"charge\"}").statusCode()).isEqualTo(200);

    refused(act("nurse", id, "hand-over", "{\"to\":\"other\"}"), "to is not on duty for ward W1");
    assertThat(shift("other", "{\"duty\":\"bedside\",\"beds\":[\"3\"]}").statusCode())
        .isEqualTo(200);
    assertThat(act("nurse", id, "hand-over", "{\"to\":\"other\"}").statusCode()).isEqualTo(200);
    refused(
        shift("nurse", "{\"duty\":\"bedside\",\"account\":\"elsewhere\"}"),
        "account may not open the pages of ward W1");
  }

  @Test
  void shouldCallAgainWhenTheAccountOfTheOwnerIsDeleted() {
    var id = owned("V-63");

    assertThat(as("admin").delete("/api/accounts/nurse").statusCode()).isEqualTo(204);
    assertThat(unfit.look()).isEqualTo(1);

    var now = json("other", "/api/episodes/" + id);
    assertThat(now.getString("episode.state")).isEqualTo("open");
    assertThat(now.getString("episode.owner")).isNull();
    assertThat(now.getString("story[-1].kind")).isEqualTo("owner-left");
    assertThat(now.getString("story[-1].reason")).isEqualTo("Nurse of the tests has no account");
    assertThat(deliveries.tones(Set.of("W1"))).extracting("episode").containsExactly(id);
  }

  @Test
  void shouldCallAgainWhenTheOwnerLosesTheRole() {
    var id = owned("V-64");
    var body =
        "{\"displayName\":\"Nurse of the tests\",\"roles\":[\"manager\"],\"wards\":[\"W1\"]}";

    assertThat(as("admin").body(body).put("/api/accounts/nurse").statusCode()).isEqualTo(204);
    unfit.look();

    assertThat(json("other", "/api/episodes/" + id).getString("story[-1].kind"))
        .isEqualTo("owner-left");
  }

  @Test
  void shouldCallTheWardToWhichThePatientIsMovedAndLeaveNobodyWhoMayNotOpenItsPages() {
    var id = owned("V-65");

    intake.take(List.of(new News.BedMove(encounter("V-65", "W2", "9", 2))));

    assertThat(deliveries.tones(Set.of("W2"))).extracting("episode").containsExactly(id);
    assertThat(json("elsewhere", "/api/episodes/" + id).getString("story[-1].kind"))
        .isEqualTo("transferred");
    unfit.look();
    var now = json("elsewhere", "/api/episodes/" + id);
    assertThat(now.getString("episode.owner")).isNull();
    assertThat(now.getString("episode.state")).isEqualTo("open");
    assertThat(as("nurse").get("/api/episodes/" + id).statusCode()).isEqualTo(403);
    assertThat(act("elsewhere", id, "acknowledge", "{}").statusCode()).isEqualTo(200);
  }

  @Test
  void shouldSayOnBoardAndPageAndInEveryAnswerThatNobodyHasBeenReached() {
    var id = shown("V-66");

    for (var told :
        List.of(
            json("nurse", "/api/episodes/" + id).getList("told"),
            json("nurse", "/api/episodes/" + id).getList("episode.told"),
            json("nurse", "/api/episodes?ward=W1").getList("[0].told"),
            json("nurse", "/api/wards/W1/board").getList("patients[0].episode.told"),
            json("nurse", "/api/encounters/V-66").getList("episode.told"))) {
      assertThat(told).isNotNull().isEmpty();
    }
    for (var path : List.of("/wards/W1", "/encounters/V-66", "/response")) {
      assertThat(as("nurse").accept(ContentType.HTML).get(path).asString())
          .as(path)
          .contains("shown here only: telephone")
          .doesNotContain("told: ");
    }
  }

  @Test
  void shouldListWhatWasDeliveredAndWhen() {
    var id = shown("V-67");
    var notice = deliveries.tones(Set.of("W1")).get(0).notice();

    deliveries.sounded(
        notice, new Actor("nurse", "Nurse of the tests", Set.of("charge")), Set.of("W1"));

    var expected =
        Map.of(
            "person", "page of Nurse of the tests",
            "channel", "tone",
            "at", "2026-01-05T03:10:00Z",
            "delivered", true);
    assertThat(json("nurse", "/api/wards/W1/board").getList("patients[0].episode.told"))
        .isEqualTo(List.of(expected));
    assertThat(json("nurse", "/api/encounters/V-67").getList("episode.told"))
        .isEqualTo(List.of(expected));
    assertThat(json("nurse", "/api/episodes/" + id).getList("told")).isEqualTo(List.of(expected));
    assertThat(json("nurse", "/api/episodes/" + id).getList("story[0].episode.told"))
        .isEqualTo(List.of(expected));
    assertThat(as("nurse").accept(ContentType.HTML).get("/wards/W1").asString())
        .contains("sounded at the page of Nurse of the tests 03:10")
        .doesNotContain("shown here only");
  }

  private String owned(String encounter) {
    var id = worried(encounter).id();
    assertThat(act("nurse", id, "acknowledge", "{}").statusCode()).isEqualTo(200);
    return id;
  }

  /** An open episode that the read model knows as well. */
  private String shown(String encounter) {
    var episode = worried(encounter);
    model.keep(
        new Batch(
            List.of(encounter(encounter, "W1", "3", 1)),
            List.of(),
            List.of(),
            List.of(),
            List.of(change(1, "opened", episode))));
    return episode.id();
  }

  private Episode worried(String encounter) {
    intake.take(List.of(new News.BedMove(encounter(encounter, "W1", "3", 1))));
    return worries
        .worry(encounter, "grey", new Actor("nurse", "Nurse", Set.of("charge")))
        .orElseThrow();
  }

  private static void refused(Response answer, String why) {
    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(answer.jsonPath().getString("faults[0].detail")).isEqualTo(why);
  }

  private static Response act(String who, String id, String action, String body) {
    return as(who).body(body).post("/api/episodes/" + id + "/" + action);
  }

  private static Response shift(String who, String body) {
    return as(who).body(body).post("/api/wards/W1/shifts");
  }

  private static JsonPath json(String who, String path) {
    var answer = as(who).get(path);
    assertThat(answer.statusCode()).as(path).isEqualTo(200);
    return answer.jsonPath();
  }

  private static RequestSpecification as(String name) {
    var proof = (name + ":" + PASSWORD).getBytes(StandardCharsets.UTF_8);
    return given()
        .header("Authorization", "Basic " + Base64.getEncoder().encodeToString(proof))
        .contentType(ContentType.JSON);
  }

  private void account(String name, String role, String ward) {
    var display = Character.toUpperCase(name.charAt(0)) + name.substring(1) + " of the tests";
    accounts.put(new Account(name, display, Set.of(role), Set.of(ward)), PASSWORD);
  }

  private void run(String sql) throws SQLException {
    try (var connection = database.getConnection();
        var statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
