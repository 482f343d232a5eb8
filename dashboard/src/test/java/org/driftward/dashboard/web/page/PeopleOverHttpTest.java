package org.driftward.dashboard.web.page;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.driftward.dashboard.Samples.assessment;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.plan;
import static org.driftward.dashboard.Samples.snapshot;

import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.filter.cookie.CookieFilter;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CallDesk;
import org.driftward.alerts.contract.CarePlanDesk;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.ClinicalEvent.Kind;
import org.driftward.alerts.contract.EventDesk;
import org.driftward.alerts.contract.HandoverDesk;
import org.driftward.alerts.contract.ShiftDesk;
import org.driftward.alerts.contract.WardHandoverDesk;
import org.driftward.alerts.contract.WorryDesk;
import org.driftward.dashboard.account.StoredAccounts;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.dashboard.store.Batch;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.dashboard.web.api.DatabaseResource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Duties, hand-overs, calls and care plans as people enter them, over real HTTP and SQL. */
@QuarkusTest
@WithTestResource(DatabaseResource.class)
@Timeout(120)
class PeopleOverHttpTest {

  private static final String PASSWORD = "a password of the tests";
  private static final Pattern TOKEN = Pattern.compile("name=\"csrf-token\" value=\"([^\"]+)\"");
  private static final Pattern SHEET = Pattern.compile("name=\"sheet\" value=\"([^\"]+)\"");

  @Inject ReadModel model;
  @Inject StoredAccounts accounts;
  @Inject DataSource database;
  @Inject ShiftDesk shifts;
  @Inject HandoverDesk handovers;
  @Inject WardHandoverDesk wardHandovers;
  @Inject CallDesk calls;
  @Inject EventDesk events;
  @Inject CarePlanDesk plans;
  @Inject WorryDesk worries;
  @Inject DowntimeCopies copies;
  @Inject DashboardConfig config;

  private final CookieFilter cookies = new CookieFilter();

  @BeforeEach
  void fill() throws SQLException {
    run(
        "DELETE FROM dashboard.account; DELETE FROM dashboard.sign_in_failure;"
            + " DELETE FROM dashboard.encounter; DELETE FROM dashboard.snapshot;"
            + " DELETE FROM dashboard.assessment; DELETE FROM dashboard.care_plan;"
            + " DELETE FROM alerts.shift; DELETE FROM alerts.handover;"
            + " DELETE FROM alerts.ward_handover; DELETE FROM alerts.call; DELETE FROM alerts.event;"
            + " DELETE FROM alerts.deadline; DELETE FROM alerts.episode; DELETE FROM alerts.course");
    accounts.put(account("nurse", "charge", "W1"), PASSWORD);
    accounts.put(account("next", "charge", "W1"), PASSWORD);
    accounts.put(account("team", "response", "*"), PASSWORD);
    accounts.put(account("boss", "manager", "*"), PASSWORD);
    model.keep(
        new Batch(
            List.of(encounter("V", "W1", "3", 1), encounter("U", "W2", "1", 1)),
            List.of(plan("V", 1, "ward care")),
            List.of(assessment("V", "A1", 1, 0)),
            List.of(snapshot("V", "A1", 1, 0, 6, 8)),
            List.of()));
  }

  @Test
  void shouldTakeADutyOverAndEndIt() {
    signIn("nurse");
    assertThat(session().get("/wards/W1/staff").asString())
        .contains("Nobody is in charge of this ward")
        .contains("Nobody looks after bed 3");
    post("/wards/W1/staff", Map.of("duty", "bedside", "bed", "3", "account", "nurse"));
    assertThat(shifts.running("W1"))
        .singleElement()
        .satisfies(s -> assertThat(s.beds()).hasSize(1));

    signIn("next");
    var mine = shifts.running("W1").get(0).id();
    var taken = post("/wards/W1/staff", Map.of("takesOver", mine));

    assertThat(taken.statusCode()).isEqualTo(303);
    var now = shifts.running("W1").get(0);
    assertThat(now.account()).isEqualTo("next");
    assertThat(now.beds()).containsExactly("3");
    assertThat(post("/wards/W1/staff/" + now.id() + "/end", Map.of()).statusCode()).isEqualTo(303);
    assertThat(shifts.running("W1")).isEmpty();
    assertThat(post("/wards/W1/staff", Map.of("duty", "charge", "account", "none")).statusCode())
        .isEqualTo(422);
    assertThat(session().get("/wards/W2/staff").statusCode()).isEqualTo(403);
  }

  @Test
  void shouldTakeTheAddressAtWhichSomebodyOnDutyIsTold() {
    signIn("nurse");
    assertThat(post("/wards/W1/staff", Map.of("duty", "bedside", "mail", "nowhere")).statusCode())
        .isEqualTo(422);

    post("/wards/W1/staff", Map.of("duty", "bedside", "mail", "nurse@ward.example"));

    assertThat(session().get("/wards/W1/staff").asString())
        .contains("alarms to nurse@ward.example");
    var mine = shifts.running("W1").get(0).id();
    assertThat(post("/wards/W1/staff/" + mine + "/end", Map.of()).statusCode()).isEqualTo(303);
  }

  @Test
  void shouldHandAPatientOverOnlyWithAConfirmedRecommendation() {
    signIn("nurse");
    var page = session().get("/encounters/V/handover").asString();
    assertThat(page).contains("Draft from policy").contains("NEWS2 6 to 8 (incomplete)");
    var form =
        Map.of(
            "identify", "i",
            "situation", "s",
            "background", "b",
            "assessment", "likely fluid loss",
            "recommendation", "Draft from policy, to be changed or confirmed: a set now.",
            "receiver", "Dr Six, registrar");

    var refused = post("/encounters/V/handover", form);
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.asString()).contains("likely fluid loss");
    var confirmed = new HashMap<>(form);
    confirmed.put("confirm", "on");
    confirmed.put("readBack", "on");
    assertThat(post("/encounters/V/handover", confirmed).statusCode()).isEqualTo(303);

    assertThat(handovers.of("V"))
        .singleElement()
        .satisfies(
            given -> {
              assertThat(given.text().recommendation()).isEqualTo("a set now.");
              assertThat(given.receiver()).isEqualTo("Dr Six, registrar");
              assertThat(given.readBack()).isTrue();
            });
    assertThat(session().get("/encounters/U/handover").statusCode()).isEqualTo(403);
  }

  @Test
  void shouldHaveTheWardSignedForByGiverAndReceiver() {
    signIn("nurse");
    var sheet = SHEET.matcher(session().get("/wards/W1/handover").asString());
    assertThat(sheet.find()).isTrue();
    post("/wards/W1/handover", Map.of("sheet", sheet.group(1), "note", "bed 3 goes at 10"));
    var given = wardHandovers.recent("W1", 5).get(0);
    assertThat(given.sheet()).contains("Occupancy", "1 patient", "Observations overdue");
    assertThat(post("/wards/W1/handover/" + given.id() + "/receive", Map.of()).statusCode())
        .isEqualTo(422);

    signIn("next");
    assertThat(session().get("/wards/W1/handover").asString()).contains("Sign as the receiver");
    assertThat(post("/wards/W1/handover/" + given.id() + "/receive", Map.of()).statusCode())
        .isEqualTo(303);

    assertThat(wardHandovers.recent("W1", 5).get(0).receiver()).isEqualTo("next");
  }

  @Test
  void shouldClaimNoTellingAfterAWorryThatReachedNobody() {
    signIn("nurse");
    var token = TOKEN.matcher(session().get("/wards/W1").asString());
    assertThat(token.find()).isTrue();

    var answer =
        session()
            .header("HX-Request", "true")
            .formParam("csrf-token", token.group(1))
            .formParam("note", "grey")
            .post("/encounters/V/worry");

    assertThat(answer.asString())
        .contains("Your worry is recorded. Shown here only: telephone ")
        .doesNotContain("told");
  }

  @Test
  void shouldRecordACall() {
    var id =
        worries
            .worry("V", "grey", new Actor("team", "Team", Set.of("response")))
            .orElseThrow()
            .id();
    signIn("team");
    assertThat(session().get("/encounters/V/call").header("Location"))
        .endsWith("/episodes/" + id + "/call");
    var path = "/episodes/" + id + "/call";
    assertThat(session().get(path).asString()).contains("not yet received");
    post(path, Map.of("step", "received"));
    post(path, Map.of("step", "at-bedside", "at", "03:05"));
    post(path, Map.of("treatment", "oxygen", "note", "4 L/min"));
    post(path, Map.of("present", "registrar, nurse"));
    assertThat(post(path, Map.of("disposition", "stayed-with-plan")).statusCode()).isEqualTo(422);
    post(path, Map.of("disposition", "stayed-with-plan", "plan", "hourly", "nextSet", "04:00"));

    var call = calls.find(id).orElseThrow();
    assertThat(call.finished()).isTrue();
    assertThat(call.present()).containsExactlyInAnyOrder("registrar", "nurse");
    assertThat(call.treatments()).hasSize(1);
    assertThat(session().get(path).asString()).contains("Stays, with a plan").contains("03:05");
  }

  @Test
  void shouldSignAndEndACarePlan() {
    signIn("nurse");
    var limits =
        Map.of(
            "limit", "heart-rate",
            "low", "45",
            "high", "",
            "for", "PT12H",
            "reason", "athlete",
            "scale", "1");
    assertThat(post("/encounters/V/care-plan", limits).statusCode())
        .as("altered limits need a senior who agreed")
        .isEqualTo(422);
    var agreed = new HashMap<>(limits);
    agreed.put("approvedBy", "Dr Six");
    agreed.put("approverRole", "consultant");
    assertThat(post("/encounters/V/care-plan", agreed).statusCode()).isEqualTo(303);

    var plan = plans.find("V").orElseThrow();
    assertThat(plan.limit("heart-rate").low()).isEqualByComparingTo("45");
    assertThat(plan.limit("heart-rate").oldLow()).isNotNull();
    assertThat(plan.until()).isEqualTo(plan.from().plus(Duration.ofHours(12)));
    assertThat(post("/encounters/V/care-plan/end", Map.of("reason", "done")).statusCode())
        .isEqualTo(303);
    assertThat(plans.find("V").orElseThrow().limits()).isEmpty();
    assertThat(post("/encounters/U/care-plan", agreed).statusCode()).isEqualTo(403);
  }

  @Test
  void shouldKeepACopyOfEveryWardWhateverItIsCalled() throws IOException {
    model.keep(
        new Batch(
            List.of(
                encounter("S", "/".repeat(90), "1", 1),
                encounter("D", "..", "1", 1),
                encounter("L", "\u5e9c".repeat(128), "1", 1)),
            List.of(),
            List.of(),
            List.of(),
            List.of()));

    assertThat(copies.make()).isZero();

    for (var ward : List.of("W1", "/".repeat(90), "..", "\u5e9c".repeat(128))) {
      assertThat(config.downtime().folder().resolve(CopyName.of(ward))).isRegularFile();
    }
  }

  @Test
  void shouldMakeTheOtherCopiesBesideAWardThatCannotBeCopied() throws Exception {
    var folder = config.downtime().folder();
    copies.make();
    // A folder of its own name stands in the way of one ward's file.
    Files.deleteIfExists(folder.resolve("W1.html"));
    Files.createDirectories(folder.resolve("W1.html").resolve("in the way"));
    Files.deleteIfExists(folder.resolve("W2.html"));

    try {
      assertThat(copies.make()).isEqualTo(1);

      assertThat(folder.resolve("W2.html")).isRegularFile();
      signIn("nurse");
      // One look at what is set aside serves all pages for a moment.
      await()
          .atMost(Duration.ofSeconds(10))
          .untilAsserted(
              () ->
                  assertThat(session().get("/wards/W1").asString())
                      .contains("The copy for downtime is old."));
    } finally {
      Files.delete(folder.resolve("W1.html").resolve("in the way"));
      Files.delete(folder.resolve("W1.html"));
      run("DELETE FROM ground.quarantine");
    }
  }

  @Test
  void shouldKeepACopyOfEveryWardForDowntime() throws IOException {
    copies.make();

    var copy = Files.readString(config.downtime().folder().resolve("W1.html"));
    assertThat(copy)
        .contains("As at <b>5 Jan 2026 03:10</b>")
        .contains("Bed 3", "Sample", "3 Feb 1950", "P-V", "NEWS2 6–8, incomplete, at least 6")
        .contains("<tr class=\"blank\">")
        .contains("<style>")
        .doesNotContain("href=\"/", "src=\"/");
    signIn("nurse");
    assertThat(session().get("/wards/W1/downtime").asString()).contains("copy for downtime");
    assertThat(session().get("/wards/W2/downtime").statusCode()).isEqualTo(403);
  }

  @Test
  void shouldKeepAnEventWithItsTimeAndRefuseOneThatIsNone() {
    signIn("nurse");
    var path = "/encounters/V/events";
    assertThat(post(path, Map.of("kind", "arrest", "at", "03:05")).statusCode()).isEqualTo(303);
    assertThat(post(path, Map.of("kind", "")).statusCode()).isEqualTo(422);
    assertThat(post(path, Map.of("kind", "arrest", "at", "soon")).statusCode()).isEqualTo(422);
    assertThat(post("/encounters/U/events", Map.of("kind", "death")).statusCode()).isEqualTo(403);

    assertThat(events.of("V")).extracting(ClinicalEvent::kind).containsExactly(Kind.ARREST);
    assertThat(session().get(path).asString()).contains("03:05").contains("Arrest");
    signIn("boss");
    assertThat(session().get(path).asString())
        .contains("Arrest")
        .doesNotContain("Record the event");
  }

  @Test
  void shouldKeepManagersOutOfTheWork() {
    signIn("boss");
    for (var path : List.of("/wards/W1/staff", "/wards/W1/handover", "/encounters/V/handover")) {
      assertThat(session().get(path).statusCode()).as(path).isEqualTo(403);
    }
  }

  private Response post(String path, Map<String, String> fields) {
    var page = session().get("/wards/W1");
    var found = TOKEN.matcher(page.asString());
    assertThat(found.find()).isTrue();
    return session().formParam("csrf-token", found.group(1)).formParams(fields).post(path);
  }

  private void signIn(String name) {
    session()
        .formParams(Map.of("j_username", name, "j_password", PASSWORD))
        .post("/j_security_check");
  }

  private RequestSpecification session() {
    return given()
        .filter(cookies)
        .header("Sec-Fetch-Site", "same-origin")
        .accept(ContentType.HTML)
        .redirects()
        .follow(false);
  }

  private static Account account(String name, String role, String... wards) {
    return new Account(name, name + " of the tests", Set.of(role), Set.of(wards));
  }

  private void run(String sql) throws SQLException {
    try (var connection = database.getConnection();
        var statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
