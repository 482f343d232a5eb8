package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A shift hands over and a response team records a call, in the machine's Chromium. */
@WithRunningApp
class PeopleInABrowserIT {

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final LocatorAssertions.ContainsTextOptions PATIENTLY =
      new LocatorAssertions.ContainsTextOptions().setTimeout(30_000);
  private static final List<String> WCAG =
      List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

  private static RunningApp app;
  private static Ward ward;
  private static Playwright playwright;
  private static Browser browser;
  private Page page;

  @BeforeAll
  static void openTheWard(RunningApp shared) {
    if (!Files.isExecutable(CHROMIUM)) {
      return;
    }
    app = shared;
    ward = Ward.open(app, "plover");
    account("late.plover", "Ilse Brandt", "charge", ward.name());
    account("team.plover", "Marek Dunn", "response", ward.name());
    ward.admit("V-801", "1", "Elder, Test");
    ward.admit("V-802", "2", "Fir, Test");
    ward.send(Sets.well("plover-1", "V-801", Instant.now().minus(Duration.ofHours(1))));
    ward.send(Sets.ill("plover-2", "V-802", Instant.now()));
    playwright =
        Playwright.create(
            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    browser =
        playwright
            .chromium()
            .launch(
                new BrowserType.LaunchOptions()
                    .setExecutablePath(CHROMIUM)
                    .setArgs(
                        List.of(
                            "--no-sandbox",
                            "--disable-gpu",
                            "--disable-quic",
                            "--no-first-run",
                            "--disable-background-networking",
                            "--disable-component-update",
                            "--disable-sync")));
  }

  private static void account(String name, String displayName, String role, String onWard) {
    var made =
        app.asAdmin()
            .put(
                "/api/accounts/" + name,
                """
                {"displayName":"%s","roles":["%s"],"wards":["%s"],"password":"%s"}
                """
                    .formatted(displayName, role, onWard, Ward.PASSWORD));
    assertThat(made.status()).as(made.body()).isEqualTo(204);
  }

  @AfterAll
  static void closeTheWard() {
    if (playwright != null) {
      playwright.close();
    }
  }

  @AfterEach
  void leave() {
    if (page != null) {
      page.context().close();
    }
  }

  @Test
  void shouldHandTheWardOverFromTheFirstDutyToTheSecondSignature() {
    signIn(ward.account());
    open("/wards/plover/staff");
    assertThat(page.locator("main")).containsText("Nobody is in charge of this ward");
    press("Begin");
    assertThat(page.locator(".shifts")).containsText("Tamsin Orchard");
    accessible();
    open("/wards/plover/handover");
    assertThat(page.locator(".sheet")).containsText("Fir, Test", PATIENTLY);
    accessible();
    page.getByLabel("Also to be said").fill("bed 1 goes home tomorrow");
    press("Sign as the giver");
    assertThat(page.locator("#signed")).containsText("Not received yet");

    signIn("late.plover");
    open("/wards/plover/staff");
    press("I take over");
    assertThat(page.locator(".shifts li")).hasCount(1);
    assertThat(page.locator(".shifts")).containsText("Ilse Brandt");
    open("/wards/plover/handover");
    press("Sign as the receiver");

    assertThat(page.locator("#signed")).containsText("Received by Ilse Brandt");
    var kept = app.as("late.plover", Ward.PASSWORD).get("/api/wards/plover/handovers");
    assertThat(kept.json().get(0).get("receiver").asText()).isEqualTo("late.plover");
    assertThat(kept.json().get(0).get("note").asText()).isEqualTo("bed 1 goes home tomorrow");
    open("/wards/plover/downtime");
    assertThat(page.locator(".paper")).containsText("Elder");
    accessible();
  }

  @Test
  void shouldRecordACallAndHandThePatientOver() {
    signIn("team.plover");
    assertThat(page.locator("#queue")).containsText("Fir", PATIENTLY);
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("call record Fir")).click();
    press("Received");
    assertThat(page.locator("main")).containsText("led by Marek Dunn");
    press("At the bedside");
    page.getByLabel("Intervention").selectOption("oxygen");
    page.getByLabel("What").fill("4 L/min");
    press("Record the intervention");
    assertThat(page.locator("main")).containsText("Oxygen: 4 L/min");
    assertThat(page.locator("main")).containsText("Trigger, set of");
    accessible();
    page.getByLabel("Plan").fill("a set every 30 min, review at noon");
    page.getByLabel("Next set at").fill("23:59");
    press("Finish the call");
    assertThat(page.locator("main")).containsText("Stays, with a plan");

    open("/encounters/V-802/handover");
    accessible();
    page.getByLabel("Assessment").fill("likely chest infection");
    page.getByLabel("The recommendation is mine").check();
    page.getByLabel("Receiver", new Page.GetByLabelOptions().setExact(false))
        .first()
        .fill("Dr Six");
    press("Hand over");
    assertThat(page.locator("#earlier")).containsText("likely chest infection");
    open("/encounters/V-802");
    accessible();
  }

  private void signIn(String account) {
    leave();
    page = browser.newContext().newPage();
    page.navigate(app.address().resolve("/").toString());
    page.getByLabel("Name").fill(account);
    page.getByLabel("Password").fill(Ward.PASSWORD);
    press("Sign in");
    page.waitForURL(Pattern.compile(".*/(wards/plover|response)$"));
  }

  private void open(String path) {
    page.navigate(app.address().resolve(path).toString());
    page.waitForLoadState();
  }

  private void press(String button) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button)).first().click();
  }

  /** Rules of WCAG 2.2 A and AA as axe-core checks them. */
  private void accessible() {
    var found = new AxeBuilder(page).withTags(WCAG).analyze();
    assertThat(found.getViolations())
        .as(page.url())
        .extracting(violation -> violation.getId() + ": " + violation.getNodes())
        .isEmpty();
  }
}
