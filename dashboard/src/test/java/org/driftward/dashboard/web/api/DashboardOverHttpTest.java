package org.driftward.dashboard.web.api;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.assessment;
import static org.driftward.dashboard.Samples.change;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.episode;
import static org.driftward.dashboard.Samples.merged;
import static org.driftward.dashboard.Samples.plan;
import static org.driftward.dashboard.Samples.snapshot;

import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
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
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.dashboard.account.StoredAccounts;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.dashboard.store.Batch;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The JSON calls and signing in, over real HTTP and on a real PostgreSQL. */
@QuarkusTest
@WithTestResource(DatabaseResource.class)
@Timeout(120)
class DashboardOverHttpTest {

  private static final String PASSWORD = "a password of the tests";
  private static final String COOKIE = "driftward-session";

  @Inject ReadModel model;
  @Inject StoredAccounts accounts;
  @Inject DataSource database;
  @TestHTTPResource URI root;

  @BeforeEach
  void fill() throws SQLException {
    run(
        "DELETE FROM dashboard.account; DELETE FROM dashboard.sign_in_failure;"
            + " DELETE FROM dashboard.access; DELETE FROM dashboard.encounter;"
            + " DELETE FROM dashboard.snapshot; DELETE FROM dashboard.assessment;"
            + " DELETE FROM dashboard.episode; DELETE FROM dashboard.episode_change;"
            + " DELETE FROM dashboard.care_plan");
    accounts.put(account("nurse", "charge", "W1"), PASSWORD);
    accounts.put(account("boss", "admin", "*"), PASSWORD);
    model.keep(
        new Batch(
            List.of(encounter("V", "W1", "3", 1), encounter("U", "W2", "1", 1)),
            List.of(plan("V", 1, "ward care")),
            List.of(assessment("V", "A1", 1, 0)),
            List.of(snapshot("V", "A1", 1, 0, 6, 8)),
            List.of(change(1, "opened", episode("E", "V", 1, EpisodeState.OPEN, Level.HIGH, 20)))));
  }

  @Test
  void shouldAskAProgramToSignInAndLeadAPersonToTheForm() {
    var program = given().get("/api/wards");
    assertThat(program.statusCode()).isEqualTo(401);
    assertThat(program.header("WWW-Authenticate")).isEqualTo("Basic realm=\"Driftward\"");

    var script = given().header("Sec-Fetch-Mode", "cors").get("/api/wards");
    assertThat(script.statusCode()).isEqualTo(401);
    assertThat(script.header("WWW-Authenticate")).isNull();

    var htmx = given().header("HX-Request", "true").get("/wards/W1");
    assertThat(htmx.statusCode()).isEqualTo(401);
    assertThat(htmx.header("HX-Redirect")).isEqualTo("/sign-in");

    var person = given().redirects().follow(false).accept(ContentType.HTML).get("/wards/W1");
    assertThat(person.statusCode()).isEqualTo(302);
    assertThat(person.header("Location")).endsWith("/sign-in");
  }

  @Test
  void shouldShowTheBoardOfOnesOwnWardOnly() {
    var board = nurse().get("/api/wards/W1/board");

    assertThat(board.statusCode()).isEqualTo(200);
    assertThat(board.header("Cache-Control")).contains("no-store");
    var json = board.jsonPath();
    assertThat(json.getString("ward")).isEqualTo("W1");
    assertThat(json.getString("asOf")).isEqualTo("2026-01-05T03:10:00Z");
    assertThat(json.getList("patients")).hasSize(1);
    assertThat(json.getMap("patients[0]"))
        .containsEntry("encounter", "V")
        .containsEntry("bed", "3")
        .containsEntry("name", "Sample, V")
        .containsEntry("level", "high")
        .containsEntry("movement", "unknown")
        .containsEntry("lastSet", "2026-01-05T03:00:00Z")
        .containsEntry("nextDue", "2026-01-05T04:00:00Z")
        .containsEntry("overdue", false)
        .containsEntry("reasons", List.of("the score is high"));
    assertThat(json.getString("patients[0].score.id")).isEqualTo("news2");
    assertThat(json.getInt("patients[0].score.low")).isEqualTo(6);
    assertThat(json.getInt("patients[0].score.high")).isEqualTo(8);
    assertThat(json.getString("patients[0].episode.state")).isEqualTo("open");
    assertProblem(nurse().get("/api/wards/W2/board"), 403, "/problems/other-ward");
    assertThat(nurse().get("/api/wards").jsonPath().getList("wards.ward")).containsExactly("W1");
    assertThat(boss().get("/api/wards").jsonPath().getList("wards.ward"))
        .containsExactly("W1", "W2");
  }

  @Test
  void shouldWriteWhatIsAbsentAsNull() {
    var patient = boss().get("/api/wards/W2/board").jsonPath().getMap("patients[0]");

    assertThat(patient).containsEntry("episode", null).containsEntry("score", null);
    assertThat(boss().get("/api/encounters/U").jsonPath().<String, Object>getMap(""))
        .containsEntry("episode", null)
        .containsEntry("snapshot", null)
        .containsEntry("carePlan", null);
  }

  @Test
  void shouldLeadFromANumberThatWasGivenUpToTheOneThatSurvives() {
    model.keep(
        new Batch(List.of(merged("T", "W1", "V", 2)), List.of(), List.of(), List.of(), List.of()));

    var answer = nurse().redirects().follow(false).get("/api/encounters/T");

    assertThat(answer.statusCode()).isEqualTo(307);
    assertThat(answer.header("Location")).endsWith("/api/encounters/V");
    assertThat(nurse().get("/api/encounters/T").jsonPath().getString("encounter")).isEqualTo("V");
    for (var page : List.of("", "/assess", "/handover", "/events")) {
      var shown =
          nurse().redirects().follow(false).accept(ContentType.HTML).get("/encounters/T" + page);
      assertThat(shown.statusCode()).as(page).isEqualTo(303);
      assertThat(shown.header("Location")).endsWith("/encounters/V" + page);
    }
  }

  @Test
  void shouldShowAPatientInFull() {
    var json = nurse().get("/api/encounters/V").jsonPath();

    assertThat(json.getMap("patient"))
        .isEqualTo(
            Map.of("id", "P-V", "name", "Sample, V", "birthDate", "1950-02-03", "sex", "female"));
    assertThat(json.getString("ward")).isEqualTo("W1");
    assertThat(json.getInt("carePlan.oxygenScale")).isEqualTo(2);
    assertThat(json.getString("snapshot.asOf")).isEqualTo("2026-01-05T03:00:00Z");
    assertThat(json.getBoolean("snapshot.overdue")).isFalse();
    assertThat(json.getList("snapshot.scores.id")).containsExactly("news2");
    assertThat(json.getList("episode.reasons")).containsExactly("the score is high");
    assertProblem(nurse().get("/api/encounters/U"), 403, "/problems/other-ward");
    assertProblem(nurse().get("/api/encounters/X"), 404, "/problems/unknown-encounter");
  }

  @Test
  void shouldShowAHistory() {
    var json = nurse().get("/api/encounters/V/history?from=2026-01-05T00:00:00Z").jsonPath();

    assertThat(json.getString("encounter")).isEqualTo("V");
    assertThat(json.getList("assessments.id")).containsExactly("A1");
    assertThat(json.getList("assessments[0].findings.code")).containsExactly("heart-rate");
    assertThat(json.getList("snapshots.assessment")).containsExactly("A1");
    assertProblem(
        nurse().get("/api/encounters/V/history?to=yesterday"), 400, "/problems/refused-input");
    assertProblem(nurse().get("/api/encounters/U/history"), 403, "/problems/other-ward");
  }

  @Test
  void shouldKeepWhoLookedAtWhom() throws SQLException {
    nurse().get("/api/encounters/V");
    nurse().get("/api/encounters/V/history");
    nurse().get("/api/encounters/U");

    assertThat(looks()).containsExactly("nurse V W1 patient", "nurse V W1 history");
  }

  @Test
  void shouldTellCheaplyThatNothingChanged() {
    var tag = nurse().get("/api/wards/W1/board").header("ETag");

    assertThat(nurse().header("If-None-Match", tag).get("/api/wards/W1/board").statusCode())
        .isEqualTo(304);
    model.keep(
        new Batch(
            List.of(encounter("V", "W1", "4", 2)), List.of(), List.of(), List.of(), List.of()));
    assertThat(nurse().header("If-None-Match", tag).get("/api/wards/W1/board").statusCode())
        .isEqualTo(200);
  }

  @Test
  void shouldSignInWithTheForm() {
    var answer = signIn("nurse", PASSWORD);

    assertThat(answer.statusCode()).isEqualTo(302);
    assertThat(answer.header("Location")).endsWith("/");
    assertThat(answer.detailedCookie(COOKIE).isHttpOnly()).isTrue();
    assertThat(answer.detailedCookie(COOKIE).getSameSite()).isEqualTo("Strict");
    assertThat(session(answer).get("/api/wards/W1/board").statusCode()).isEqualTo(200);
  }

  @Test
  void shouldRefuseAWrongPasswordAndThenMakeWait() {
    for (int i = 0; i < 5; i++) {
      var answer = signIn("nurse", "guess");
      assertThat(answer.statusCode()).isEqualTo(302);
      assertThat(answer.header("Location")).contains("/sign-in?failed");
      assertThat(answer.cookie(COOKIE)).isNull();
    }
    assertThat(signIn("nurse", PASSWORD).header("Location")).contains("/sign-in?failed");
    assertThat(nurse().get("/api/wards").statusCode()).isEqualTo(401);
  }

  @Test
  void shouldRefuseWhatAnotherSiteMakesABrowserSend() {
    var cookie = session(signIn("nurse", PASSWORD));

    assertProblem(
        cookie.header("Sec-Fetch-Site", "cross-site").body(newPassword()).put(ownPassword()),
        403,
        "/problems/foreign-origin");
    assertProblem(
        session(signIn("nurse", PASSWORD)).body(newPassword()).put(ownPassword()),
        403,
        "/problems/foreign-origin");
    assertThat(
            given()
                .header("Origin", "http://elsewhere.example")
                .formParam("j_username", "nurse")
                .formParam("j_password", PASSWORD)
                .post("/j_security_check")
                .statusCode())
        .isEqualTo(403);
    assertThat(
            session(signIn("nurse", PASSWORD))
                .header("Sec-Fetch-Site", "same-origin")
                .contentType(ContentType.JSON)
                .body(newPassword())
                .put(ownPassword())
                .statusCode())
        .isEqualTo(204);
    assertThat(nurse().get("/api/wards").statusCode()).isEqualTo(401);
    assertThat(basic("nurse", "another password here").get("/api/wards").statusCode())
        .isEqualTo(200);
  }

  @Test
  void shouldEndTheSessionOfARemovedAccountWithoutALoop() {
    var signedIn = signIn("nurse", PASSWORD);
    accounts.delete("nurse");

    var answer =
        session(signedIn).redirects().follow(false).accept(ContentType.HTML).get("/wards/W1");

    assertThat(answer.statusCode()).isEqualTo(302);
    assertThat(answer.header("Location")).endsWith("/sign-in");
    assertThat(answer.detailedCookie(COOKIE).getMaxAge()).isZero();
  }

  @Test
  void shouldLetAnAdministratorKeepTheAccounts() {
    assertThat(
            boss()
                .contentType(ContentType.JSON)
                .body(
                    """
                    {"displayName":"Night Nurse","roles":["bedside"],"wards":["W2"],
                     "password":"long enough to keep"}""")
                .put("/api/accounts/night")
                .statusCode())
        .isEqualTo(204);
    assertThat(basic("night", "long enough to keep").get("/api/wards/W2/board").statusCode())
        .isEqualTo(200);

    var list = boss().get("/api/accounts");
    assertThat(list.jsonPath().getList("accounts.name")).containsExactly("boss", "night", "nurse");
    assertThat(list.asString()).doesNotContain("$2").doesNotContain("password");

    assertThat(boss().delete("/api/accounts/night").statusCode()).isEqualTo(204);
    assertThat(basic("night", "long enough to keep").get("/api/wards").statusCode()).isEqualTo(401);
    assertThat(nurse().get("/api/accounts").statusCode()).isEqualTo(403);
    assertProblem(boss().delete("/api/accounts/boss"), 400, "/problems/refused-input");
  }

  @Test
  void shouldNameEveryFaultOfAnAccount() {
    var answer =
        boss()
            .contentType(ContentType.JSON)
            .body(
                "{\"displayName\":\" \",\"roles\":[\"king\"],\"wards\":[],\"password\":\"short\"}")
            .put("/api/accounts/Night");

    assertProblem(answer, 400, "/problems/refused-input");
    assertThat(answer.jsonPath().getList("faults.pointer"))
        .containsExactly("/name", "/displayName", "/roles", "/password");
    assertProblem(
        boss().contentType(ContentType.JSON).body("{").put("/api/accounts/night"),
        400,
        "/problems/refused-input");
  }

  @Test
  void shouldStreamTheBoardAndEndWhenTheAccountLosesTheWard() throws Exception {
    var lines = new LinkedBlockingQueue<String>();
    var request =
        HttpRequest.newBuilder(root.resolve("/api/wards/W1/stream"))
            .header("Authorization", basicHeader("nurse", PASSWORD))
            .build();
    var ended =
        HttpClient.newHttpClient()
            .sendAsync(request, BodyHandlers.ofLines())
            .thenAcceptAsync(response -> response.body().forEach(lines::add));
    assertThat(nextBoard(lines)).contains("\"bed\":\"3\"");

    model.keep(
        new Batch(
            List.of(encounter("V", "W1", "5", 3)), List.of(), List.of(), List.of(), List.of()));
    assertThat(nextBoard(lines)).contains("\"bed\":\"5\"");

    accounts.update(account("nurse", "charge", "W2"));
    ended.get(30, TimeUnit.SECONDS);
    assertProblem(nurse().get("/api/wards/W1/stream"), 403, "/problems/other-ward");
  }

  private static String nextBoard(BlockingQueue<String> lines) throws InterruptedException {
    var seen = new ArrayList<String>();
    while (true) {
      var line = lines.poll(30, TimeUnit.SECONDS);
      assertThat(line).as("lines so far: %s", seen).isNotNull();
      seen.add(line);
      if (line.startsWith("data:") && seen.contains("event:board")) {
        return line;
      }
    }
  }

  private static void assertProblem(Response answer, int status, String type) {
    assertThat(answer.statusCode()).isEqualTo(status);
    assertThat(answer.contentType()).isEqualTo("application/problem+json");
    var problem = answer.jsonPath();
    assertThat(problem.getString("type")).isEqualTo(type);
    assertThat(problem.getInt("status")).isEqualTo(status);
  }

  private static String ownPassword() {
    return "/api/accounts/nurse/password";
  }

  private static String newPassword() {
    return "{\"current\":\"" + PASSWORD + "\",\"next\":\"another password here\"}";
  }

  private static Response signIn(String name, String password) {
    return given()
        .redirects()
        .follow(false)
        .header("Sec-Fetch-Site", "same-origin")
        .formParam("j_username", name)
        .formParam("j_password", password)
        .post("/j_security_check");
  }

  private static RequestSpecification session(Response signedIn) {
    return given().cookie(COOKIE, signedIn.cookie(COOKIE));
  }

  private static RequestSpecification nurse() {
    return basic("nurse", PASSWORD);
  }

  private static RequestSpecification boss() {
    return basic("boss", PASSWORD);
  }

  private static RequestSpecification basic(String name, String password) {
    return given().header("Authorization", basicHeader(name, password));
  }

  private static String basicHeader(String name, String password) {
    var bytes = (name + ":" + password).getBytes(StandardCharsets.UTF_8);
    return "Basic " + Base64.getEncoder().encodeToString(bytes);
  }

  private static Account account(String name, String role, String ward) {
    return new Account(name, "A " + name, Set.of(role), Set.of(ward));
  }

  private void run(String sql) throws SQLException {
    try (var connection = database.getConnection();
        var statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  private List<String> looks() throws SQLException {
    try (var connection = database.getConnection();
        var statement = connection.createStatement();
        var rows =
            statement.executeQuery(
                "SELECT concat_ws(' ', account, encounter, ward, what) FROM dashboard.access"
                    + " ORDER BY id")) {
      var looks = new ArrayList<String>();
      while (rows.next()) {
        looks.add(rows.getString(1));
      }
      return looks;
    }
  }
}
