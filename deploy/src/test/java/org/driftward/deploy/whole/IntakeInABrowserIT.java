package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Intake as an integration engineer sees it, in the machine's Chromium. */
@WithRunningApp
class IntakeInABrowserIT {

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final String ACCOUNT = "feeds.teasel";
  private static final LocatorAssertions.ContainsTextOptions PATIENTLY =
      new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

  private static RunningApp app;
  private static Caller feeds;
  private static Ward teasel;
  private static Playwright playwright;
  private static Browser browser;
  private Page page;

  @BeforeAll
  static void openTheWard(RunningApp shared) {
    if (!Files.isExecutable(CHROMIUM)) {
      return;
    }
    app = shared;
    teasel = Ward.open(app, "teasel");
    teasel.admit("V-4201", "1", "Saltmarsh, Ida");
    var made =
        app.asAdmin()
            .put(
                "/api/accounts/" + ACCOUNT,
                """
                {"displayName":"Orla Finch","roles":["integration"],"wards":["teasel"],\
                "password":"%s"}"""
                    .formatted(Ward.PASSWORD));
    assertThat(made.status()).as(made.body()).isEqualTo(204);
    feeds = app.as(ACCOUNT, Ward.PASSWORD);
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

  @AfterAll
  static void closeTheBrowser() {
    if (playwright != null) {
      playwright.close();
    }
  }

  @BeforeEach
  void signIn() {
    Assumptions.assumeTrue(browser != null, "chromium is not installed");
    signIn(ACCOUNT, Ward.PASSWORD);
  }

  private void signIn(String account, String password) {
    page = browser.newContext().newPage();
    page.navigate(at("/intake"));
    page.getByLabel("Name").fill(account);
    page.getByLabel("Password").fill(password);
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in")).click();
    page.waitForURL(Pattern.compile(".*/(intake|wards).*"));
  }

  @AfterEach
  void leave() {
    if (page != null) {
      page.context().close();
    }
  }

  @Test
  void shouldMendARefusalByKeyboardAndSeeItAccepted() {
    var refused = feeds.post("/api/assessments", Sets.well("teasel-1", "V-4299", Instant.now()));
    assertThat(refused.status()).isEqualTo(400);
    var line = page.locator(".refusal").first();
    showUntil(line, "unknown-encounter");
    line.getByRole(AriaRole.LINK).first().press("Enter");
    page.waitForURL(Pattern.compile(".*/intake/refusals/.*"));

    assertThat(page.getByLabel("As text, UTF-8")).containsText("\"encounter\":\"V-4299\"");
    var copy = page.getByLabel("A copy to mend");
    copy.fill(copy.inputValue().replace("V-4299", "V-4201"));
    copy.press("Tab");
    page.keyboard().press("Enter");

    showUntil(page.locator("main"), "accepted at last");
    assertThat(page.locator("main")).containsText(ACCOUNT + " replayed a mended copy");
    assertThat(page.locator("main pre").first()).containsText("V-4299");
  }

  @Test
  void shouldSendAFileAndFollowItsRows() {
    page.navigate(at("/intake"));
    var rows =
        "encounter,patient,takenAt,heart-rate [/min]\nV-4201,P-V-4201,%s,70\nV-4201,P-V-4201,%s,999\n"
            .formatted(Instant.now().minusSeconds(600), Instant.now().minusSeconds(500));
    page.locator("#file")
        .setInputFiles(
            new FilePayload("teasel.csv", "text/csv", rows.getBytes(StandardCharsets.UTF_8)));
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Send the file")).click();

    assertThat(page.locator("#sent-words")).containsText("All of it has arrived", PATIENTLY);
    assertThat(page.locator("#files"))
        .containsText("2 rows read, 1 accepted, 1 refused", PATIENTLY);
    assertThat(page.locator("#feeds")).containsText("file/" + ACCOUNT, PATIENTLY);
  }

  /** HL7 v2.5.1 chapter 7.4.2: OBX-3 and OBX-6 in the sender's own words. */
  @Test
  void shouldSayWhatACodeMeansAndSeeTheHeldMessageComeIn() {
    page.context().close();
    signIn("admin", RunningApp.ADMIN_PASSWORD);
    try (var sender = new MllpSender(app.mllpPort())) {
      assertThat(sender.exchange(heartRateInTheirWords())).contains("MSA|AA|").contains("|W|");
    }
    showUntil(page.locator("main"), "Herzfrequenz");
    check("intake with an unmapped code");
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("HF-4201")).click();
    page.waitForURL(Pattern.compile(".*/intake/codes/.*"));

    page.getByLabel("Finding").selectOption("heart-rate");
    page.getByLabel("Schlaege means").fill("Cel");
    check("a code");
    var say =
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("It means Heart rate"));
    say.click();
    assertThat(page.locator("#outcome")).containsText("does not convert", PATIENTLY);
    page.getByLabel("Schlaege means").fill("/min");
    say.click();

    assertThat(page.locator(".now")).containsText("It means Heart rate", PATIENTLY);
    showUntil(page.locator(".now"), "No held message waits");
    assertThat(page.locator("main")).containsText("admin said it means Heart rate");
    check("a code that means something");
    await()
        .atMost(Duration.ofMinutes(1))
        .untilAsserted(
            () ->
                assertThat(teasel.history("V-4201").toString())
                    .contains("\"value\":71", "hl7:THEIRS|WEST"));
  }

  private static String heartRateInTheirWords() {
    var at =
        DateTimeFormatter.ofPattern("yyyyMMddHHmmssZ")
            .withZone(ZoneOffset.UTC)
            .format(Instant.now().minusSeconds(300));
    return String.join(
        "\r",
        "MSH|^~\\&|THEIRS|WEST|DRIFTWARD|HOUSE|" + at + "||ORU^R01|M-4201|P|2.5.1",
        "PID|1||P-V-4201",
        "PV1|1|I|" + "|".repeat(16) + "V-4201",
        "OBR|1||F-4201^THEIRS|SET^Vital signs^L|||" + at,
        "OBX|1|NM|HF-4201^Herzfrequenz^L||71|Schlaege|||||F");
  }

  /** Rules of WCAG 2.2 A and AA as axe-core checks them. */
  @Test
  void shouldHaveNoFaultThatAxeFinds() {
    feeds.post("/api/assessments", "{\"id\": 7}");
    showUntil(page.locator(".refusal").first(), "missing-field");
    check("/intake");
    page.locator(".refusal a").first().click();
    page.waitForURL(Pattern.compile(".*/intake/refusals/.*"));
    check("a refusal");
  }

  private void check(String what) {
    var found =
        new AxeBuilder(page)
            .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"))
            .analyze();
    assertThat(found.getViolations())
        .as(what)
        .extracting(violation -> violation.getId() + ": " + violation.getHelp())
        .isEmpty();
  }

  /** Loads the page again until it says so: the list does not move under a hand. */
  private void showUntil(Locator place, String words) {
    if (page.url().contains("/wards")) {
      page.navigate(at("/intake"));
    }
    for (int i = 0; i < 60; i++) {
      if (place.count() > 0 && place.innerText().contains(words)) {
        return;
      }
      page.waitForTimeout(500);
      page.reload();
    }
    assertThat(place).containsText(words);
  }

  private static String at(String path) {
    return app.address().resolve(path).toString();
  }
}
