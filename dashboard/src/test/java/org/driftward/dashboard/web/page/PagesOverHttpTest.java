package org.driftward.dashboard.web.page;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.assessment;
import static org.driftward.dashboard.Samples.change;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.episode;
import static org.driftward.dashboard.Samples.plan;
import static org.driftward.dashboard.Samples.snapshot;

import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.filter.cookie.CookieFilter;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.dashboard.account.StoredAccounts;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.dashboard.store.Batch;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.dashboard.web.api.DatabaseResource;
import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The pages over real HTTP, with their real templates and a real PostgreSQL. */
@QuarkusTest
@WithTestResource(DatabaseResource.class)
@Timeout(120)
class PagesOverHttpTest {

  private static final String PASSWORD = "a password of the tests";
  private static final Pattern TOKEN = Pattern.compile("name=\"csrf-token\" value=\"([^\"]+)\"");

  private static final String PREVIEW = "/api/encounters/V/preview";
  private static final String PREVIEW_PART = "/encounters/V/assess/preview";

  @Inject ReadModel model;
  @Inject StoredAccounts accounts;
  @Inject DataSource database;
  @TestHTTPResource URI root;

  private final CookieFilter cookies = new CookieFilter();

  @BeforeEach
  void fill() throws SQLException {
    run(
        "DELETE FROM dashboard.account; DELETE FROM dashboard.sign_in_failure;"
            + " DELETE FROM dashboard.access; DELETE FROM dashboard.encounter;"
            + " DELETE FROM dashboard.snapshot; DELETE FROM dashboard.assessment;"
            + " DELETE FROM dashboard.episode; DELETE FROM dashboard.episode_change;"
            + " DELETE FROM dashboard.care_plan");
    accounts.put(account("nurse", "charge", "W1"), PASSWORD);
    accounts.put(account("team", "response", "*"), PASSWORD);
    accounts.put(account("boss", "manager", "*"), PASSWORD);
    accounts.put(account("nobody", "bedside"), PASSWORD);
    model.keep(
        new Batch(
            List.of(encounter("V", "W1", "3", 1), encounter("U", "W2", "1", 1)),
            List.of(plan("V", 1, "ward care")),
            List.of(assessment("V", "A1", 1, 0)),
            List.of(snapshot("V", "A1", 1, 0, 6, 8)),
            List.of(change(1, "opened", episode("E", "V", 1, EpisodeState.OPEN, Level.HIGH, 20)))));
  }

  @Test
  void shouldLeadEverybodyToTheirOwnStartPage() {
    assertThat(startOf("nurse")).endsWith("/wards/W1");
    assertThat(startOf("team")).endsWith("/response");
    assertThat(startOf("boss")).endsWith("/wards");
    assertThat(basic("nobody").get("/").asString()).contains("No ward yet");
  }

  @Test
  void shouldShowTheBoardOfOnesOwnWardOnly() {
    var board = basic("nurse").get("/wards/W1");

    assertThat(board.statusCode()).isEqualTo(200);
    assertThat(board.header("Cache-Control")).isEqualTo("no-store");
    assertThat(board.asString()).contains("Sample").contains("<b>6–8</b>").contains("Nobody yet");
    var other = basic("nurse").get("/wards/W2");
    assertThat(other.statusCode()).isEqualTo(403);
    assertThat(other.asString()).contains("Not your ward");
  }

  @Test
  void shouldShowAPatientAndKeepWhoLooked() throws SQLException {
    var page = basic("nurse").get("/encounters/V");

    assertThat(page.statusCode()).isEqualTo(200);
    assertThat(page.asString()).contains("P-V").contains("3 Feb 1950").contains("Sample");
    assertThat(basic("nurse").get("/encounters/U").statusCode()).isEqualTo(403);
    assertThat(basic("nurse").get("/encounters/X").statusCode()).isEqualTo(404);
    assertThat(looks()).containsExactly("nurse V W1 patient");
  }

  @Test
  void shouldOpenTheEntryPageForThoseWhoCareAndKeepWhoLooked() throws SQLException {
    var page = basic("nurse").get("/encounters/V/assess");

    assertThat(page.statusCode()).isEqualTo(200);
    assertThat(page.header("Cache-Control")).isEqualTo("no-store");
    assertThat(page.asString()).contains("data-field=\"heart-rate\"").contains("81 /min, 03:00");
    assertThat(basic("nurse").get("/encounters/U/assess").statusCode()).isEqualTo(403);
    assertThat(basic("nurse").get("/encounters/X/assess").statusCode()).isEqualTo(404);
    assertThat(basic("boss").get("/encounters/V/assess").statusCode()).isEqualTo(403);
    assertThat(looks()).containsExactly("nurse V W1 assess");
  }

  @Test
  void shouldOpenACorrectionWithItsValuesAndNoneOfWhatDoesNotExist() {
    var page = basic("nurse").get("/encounters/V/assess?correct=A1");

    assertThat(page.asString())
        .contains("Why is it corrected?")
        .contains("name=\"revision\" value=\"2\"")
        .contains("value=\"81\"");
    assertThat(basic("nurse").get("/encounters/V/assess?correct=B").statusCode()).isEqualTo(404);
  }

  /** RCP NEWS2 2017, chart 1: a rate of 25/min scores 3, a pulse of 131/min scores 3. */
  @Test
  void shouldForeseeADraftWithoutKeepingIt() throws SQLException {
    var draft = draft("A2", 25, 131);

    var json = basic("nurse").contentType(ContentType.JSON).body(draft).post(PREVIEW);
    var part = basic("nurse").contentType(ContentType.JSON).body(draft).post(PREVIEW_PART);

    assertThat(json.statusCode()).as(json.asString()).isEqualTo(200);
    assertThat(json.jsonPath().getInt("snapshot.scores[0].low")).isEqualTo(6);
    assertThat(json.jsonPath().getInt("snapshot.scores[0].single")).isEqualTo(3);
    assertThat(json.jsonPath().getBoolean("snapshot.latest")).isTrue();
    assertThat(part.asString()).contains("incomplete, at least 6");
    assertThat(count("dashboard.assessment")).isEqualTo(1);
    assertThat(count("dashboard.snapshot")).isEqualTo(1);
  }

  @Test
  void shouldForeseeThatADraftWouldBeRefused() {
    var json =
        basic("nurse").contentType(ContentType.JSON).body(draft("A2", 25, 900)).post(PREVIEW);

    assertThat(json.statusCode()).isEqualTo(400);
    assertThat(json.jsonPath().getString("faults[0].pointer")).isEqualTo("/findings/1/value");
    assertThat(json.jsonPath().getString("faults[0].rule")).isEqualTo("out-of-range");
    var other = basic("team").contentType(ContentType.JSON).body(draft("A2", 25, 90));
    assertThat(other.post("/api/encounters/U/preview").statusCode()).isEqualTo(400);
    var foreign = basic("nurse").contentType(ContentType.JSON).body(draft("A2", 25, 90));
    assertThat(foreign.post("/api/encounters/U/preview").statusCode()).isEqualTo(403);
  }

  /** No Kafka runs here: nothing may look as if it had been kept. */
  @Test
  void shouldSayThatAPlainFormWasNotKeptWhileKafkaIsAway() {
    signIn("nurse");
    String token = token(session().get("/encounters/V/assess"));

    var answer =
        session()
            .formParam("csrf-token", token)
            .formParam("assessment", "A9")
            .formParam("heart-rate", "88")
            .formParam("expected", "chest")
            .post("/encounters/V/assess");

    assertThat(answer.statusCode()).isEqualTo(503);
    assertThat(answer.asString()).contains("Not recorded").contains("Nothing was kept");
  }

  @Test
  void shouldAskForAReasonAndTheNewestRevisionBeforeARetraction() {
    signIn("nurse");
    String token = token(session().get("/encounters/V/assess?correct=A1"));

    assertThat(retract(token, "2", " ").statusCode()).isEqualTo(422);
    assertThat(retract(token, "4", "wrong patient").statusCode()).isEqualTo(409);
    assertThat(retract("no such token", "2", "wrong patient").statusCode()).isEqualTo(400);
  }

  private Response retract(String token, String revision, String reason) {
    return session()
        .formParam("csrf-token", token)
        .formParam("assessment", "A1")
        .formParam("revision", revision)
        .formParam("reason", reason)
        .post("/encounters/V/assess/retract");
  }

  private static String draft(String id, int respiratoryRate, int heartRate) {
    return """
        {"id":"%s","revision":1,"status":"final","encounter":"V","patient":"P-V",
         "takenAt":"2026-01-05T03:09:00Z","recordedAt":"2026-01-05T03:09:00Z",
         "source":"bedside","by":"nurse",
         "findings":[{"code":"respiratory-rate","value":%d,"unit":"/min"},
                     {"code":"heart-rate","value":%d,"unit":"/min"}]}
        """
        .formatted(id, respiratoryRate, heartRate);
  }

  private int count(String table) throws SQLException {
    try (var connection = database.getConnection();
        var statement = connection.createStatement();
        var rows = statement.executeQuery("SELECT count(*) FROM " + table)) {
      rows.next();
      return rows.getInt(1);
    }
  }

  @Test
  void shouldGiveTheChartsTheirCourse() {
    var course = basic("nurse").get("/encounters/V/course?hours=24");

    assertThat(course.header("Cache-Control")).isEqualTo("no-store");
    assertThat(course.jsonPath().getList("rows.code")).containsExactly("heart-rate");
    assertThat(course.jsonPath().getDouble("score.points[0].high")).isEqualTo(8);
    assertThat(basic("nurse").get("/encounters/U/course").statusCode()).isEqualTo(403);
  }

  @Test
  void shouldShowTheQueueToThoseWhoCareForPatients() {
    assertThat(basic("team").get("/response").asString()).contains("1 patient waiting, 0 in hand");
    assertThat(basic("boss").get("/response").statusCode()).isEqualTo(403);
  }

  @Test
  void shouldTakeNoFormWithoutItsToken() {
    signIn("nurse");
    String token = token(session().get("/wards/W1"));

    assertThat(acknowledge("no such token").statusCode()).isEqualTo(400);
    assertThat(acknowledge(token).statusCode()).isEqualTo(404);
  }

  @Test
  void shouldSayOnTheFormThatSigningInWasRefused() {
    assertThat(given().get("/sign-in").asString()).doesNotContain("Nobody is signed in");
    var answer = given().formParams(form("nurse", "guess")).post("/j_security_check");
    assertThat(answer.statusCode()).isEqualTo(302);
    assertThat(given().get(answer.header("Location")).asString()).contains("Nobody is signed in");
  }

  @Test
  void shouldEndTheSessionOnSigningOut() {
    signIn("nurse");
    String token = token(session().get("/wards/W1"));

    var out = session().formParam("csrf-token", token).post("/sign-out");

    assertThat(out.statusCode()).isEqualTo(303);
    assertThat(out.header("Location")).endsWith("/sign-in");
    assertThat(session().get("/wards/W1").statusCode()).isEqualTo(302);
  }

  @Test
  void shouldSendTheBoardAgainWhenItChangesAndBeatBetween() throws Exception {
    var lines = new ArrayList<String>();
    var request =
        HttpRequest.newBuilder(root.resolve("/wards/W1/live"))
            .header("Authorization", basicHeader("nurse"))
            .build();
    try (var stream = HttpClient.newHttpClient().send(request, BodyHandlers.ofLines()).body()) {
      var all = stream.iterator();
      readUntil(all, lines, "</small>3");
      assertThat(lines).contains("event:board");
      readUntil(all, lines, "event:beat");
      lines.clear();

      model.keep(
          new Batch(
              List.of(encounter("V", "W1", "5", 3)), List.of(), List.of(), List.of(), List.of()));
      readUntil(all, lines, "</small>5");
      assertThat(lines).contains("event:board");
    }
  }

  private static void readUntil(Iterator<String> all, List<String> seen, String wanted) {
    while (all.hasNext()) {
      String line = all.next();
      seen.add(line);
      if (line.contains(wanted)) {
        return;
      }
    }
    throw new AssertionError("the stream ended before " + wanted);
  }

  private Response acknowledge(String token) {
    return session()
        .header("HX-Request", "true")
        .formParam("csrf-token", token)
        .formParam("version", 1)
        .post("/episodes/none/acknowledge");
  }

  private void signIn(String name) {
    session().formParams(form(name, PASSWORD)).post("/j_security_check");
  }

  private static Map<String, String> form(String name, String password) {
    return Map.of("j_username", name, "j_password", password);
  }

  private RequestSpecification session() {
    return given()
        .filter(cookies)
        .header("Sec-Fetch-Site", "same-origin")
        .accept(ContentType.HTML)
        .redirects()
        .follow(false);
  }

  private static String startOf(String name) {
    return basic(name).redirects().follow(false).get("/").header("Location");
  }

  private static RequestSpecification basic(String name) {
    return given().header("Authorization", basicHeader(name));
  }

  private static String basicHeader(String name) {
    var pair = (name + ":" + PASSWORD).getBytes(StandardCharsets.UTF_8);
    return "Basic " + Base64.getEncoder().encodeToString(pair);
  }

  private static String token(Response page) {
    var found = TOKEN.matcher(page.asString());
    assertThat(found.find()).isTrue();
    return found.group(1);
  }

  private static Account account(String name, String role, String... wards) {
    return new Account(name, name + " of the tests", Set.of(role), Set.of(wards));
  }

  private List<String> looks() throws SQLException {
    var looks = new ArrayList<String>();
    try (var connection = database.getConnection();
        var statement = connection.createStatement();
        var rows =
            statement.executeQuery(
                "SELECT account, encounter, ward, what FROM dashboard.access ORDER BY 1, 2")) {
      while (rows.next()) {
        looks.add(
            String.join(
                " ", rows.getString(1), rows.getString(2), rows.getString(3), rows.getString(4)));
      }
    }
    return looks;
  }

  private void run(String sql) throws SQLException {
    try (var connection = database.getConnection();
        var statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
