package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.util.regex.Pattern;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The measures as a manager reads them, from a figure down to the episode that it rests on. */
@WithRunningApp
@WithChromium
class AuditInABrowserIT {

  private static final String MANAGER = "boss.siskin";

  private static Ward ward;
  private static String episode;
  private Visitor manager;
  private Page page;

  /** One patient falls ill, the family calls the team, and the nurse answers at once. */
  @BeforeAll
  static void liveThroughAnEpisode(RunningApp app) {
    ward = Ward.open(app, "siskin");
    ward.account(app, MANAGER, "Edda Rook", "manager");
    ward.admit("V-701", "1", "Hazel, Test");
    ward.send(Sets.well("siskin-1", "V-701", Instant.now().minus(Duration.ofHours(1))));
    ward.send(Sets.ill("siskin-2", "V-701", Instant.now()));
    episode =
        Awaitility.await()
            .atMost(Duration.ofSeconds(60))
            .until(AuditInABrowserIT::running, id -> !id.isEmpty());
    post(
        "/api/episodes/" + episode + "/call", "{\"caller\":\"family\",\"callerName\":\"her son\"}");
    post("/api/episodes/" + episode + "/acknowledge", "{}");
    post("/api/encounters/V-701/events", "{\"kind\":\"intervention\",\"note\":\"fluids\"}");
  }

  private static String running() {
    var list = ward.nurse().get("/api/episodes?ward=siskin").json();
    return list.isEmpty() ? "" : list.get(0).get("id").asText();
  }

  private static void post(String path, String json) {
    var answer = ward.nurse().post(path, json);
    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
  }

  @BeforeEach
  void signIn(RunningApp app, Browser browser) {
    manager = Visitor.at(app, browser);
    page = manager.page();
    manager.signIn(MANAGER);
    manager.open("/audit?ward=siskin");
  }

  @AfterEach
  void leave() {
    manager.close();
  }

  @Test
  void shouldLeadFromAFigureToItsEpisodeAndTheWayItWent() {
    var answered = page.locator("#m-time-to-acknowledge ~ dl div").filter(hasText("Within policy"));
    assertThat(answered.first()).containsText("100 %");
    assertThat(answered.first()).containsText("1/1");
    answered.first().getByRole(AriaRole.LINK).click();

    page.waitForURL(Pattern.compile(".*/audit/measures/time-to-acknowledge.*"));
    assertThat(page.locator("main")).containsText(episode);
    assertThat(page.locator("main")).containsText("siskin, bed 1");
    manager.findsNoBarrier("a measure");
    manager.follow(episode);

    page.waitForURL(Pattern.compile(".*/episodes/.*"));
    assertThat(page.locator(".identity")).containsText("Hazel");
    assertThat(page.locator(".story")).containsText("Acknowledged");
    manager.findsNoBarrier("an episode");
  }

  /** M7 of Subbe 2019: calls by the patient or the family / calls of which it is known. */
  @Test
  void shouldCountACallByTheFamily() {
    var activation = page.locator("section.measure:has(#m-M7)");
    assertThat(activation).containsText("100 %");
    assertThat(activation).containsText("1/1");
  }

  @Test
  void shouldGiveTheSameFiguresAsJsonAndAsCsv() {
    var json = page.request().get(link("JSON"));
    assertThat(json.ok()).isTrue();
    assertThat(json.text()).contains("\"time-to-acknowledge\"").contains("episode/" + episode);
    var csv = page.request().get(link("CSV"));
    assertThat(csv.ok()).isTrue();
    assertThat(csv.text()).contains("M7,Patient and family activation");
  }

  private String link(String name) {
    return (String)
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(name).setExact(true))
            .evaluate("link => link.href");
  }

  private Locator.FilterOptions hasText(String text) {
    return new Locator.FilterOptions().setHasText(text);
  }

  @Test
  void shouldHaveNoFaultThatAxeFinds() {
    manager.findsNoBarrier("measures");
    manager.open("/audit/trial?ward=siskin");
    manager.findsNoBarrier("trial");
    manager.press("Try it");
    assertThat(page.locator("main")).containsText("Both policies over");
    manager.findsNoBarrier("trial with its outcome");
  }
}
