package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.driftward.deploy.whole.Visitor.PATIENTLY;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Intake as an integration engineer sees it. */
@WithRunningApp
@WithChromium
class IntakeInABrowserIT {

  private static final String ACCOUNT = "feeds.teasel";

  private static Caller feeds;
  private static Ward teasel;
  private Visitor engineer;
  private Page page;

  @BeforeAll
  static void openTheWard(RunningApp app) {
    teasel = Ward.open(app, "teasel");
    teasel.admit("V-4201", "1", "Saltmarsh, Ida");
    teasel.account(app, ACCOUNT, "Orla Finch", "integration");
    feeds = app.as(ACCOUNT, Ward.PASSWORD);
  }

  @BeforeEach
  void signIn(RunningApp app, Browser browser) {
    engineer = Visitor.at(app, browser);
    page = engineer.page();
    engineer.signIn(ACCOUNT);
    engineer.open("/intake");
  }

  @AfterEach
  void leave() {
    engineer.close();
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
    var rows =
        "encounter,patient,takenAt,heart-rate [/min]\nV-4201,P-V-4201,%s,70\nV-4201,P-V-4201,%s,999\n"
            .formatted(Instant.now().minusSeconds(600), Instant.now().minusSeconds(500));
    page.locator("#file")
        .setInputFiles(
            new FilePayload("teasel.csv", "text/csv", rows.getBytes(StandardCharsets.UTF_8)));
    engineer.press("Send the file");

    assertThat(page.locator("#sent-words")).containsText("All of it has arrived", PATIENTLY);
    assertThat(page.locator("#files"))
        .containsText("2 rows read, 1 accepted, 1 refused", PATIENTLY);
    assertThat(page.locator("#feeds")).containsText("file/" + ACCOUNT, PATIENTLY);
  }

  /** HL7 v2.5.1 chapter 7.4.2: OBX-3 and OBX-6 in the sender's own words. */
  @Test
  void shouldSayWhatACodeMeansAndSeeTheHeldMessageComeIn(RunningApp app, Browser browser) {
    engineer.close();
    engineer = Visitor.at(app, browser);
    page = engineer.page();
    engineer.signIn("admin", RunningApp.ADMIN_PASSWORD);
    engineer.open("/intake");
    assertThat(sendHeartRateInTheirWords(app)).contains("MSA|AA|").contains("|W|");
    showUntil(page.locator("main"), "Herzfrequenz");
    engineer.findsNoBarrier("intake with an unmapped code");
    engineer.follow("HF-4201");
    page.waitForURL(Pattern.compile(".*/intake/codes/.*"));

    page.getByLabel("Finding").selectOption("heart-rate");
    page.getByLabel("Schlaege means").fill("Cel");
    engineer.findsNoBarrier("a code");
    engineer.press("It means Heart rate");
    assertThat(page.locator("#outcome")).containsText("does not convert", PATIENTLY);
    page.getByLabel("Schlaege means").fill("/min");
    engineer.press("It means Heart rate");

    assertThat(page.locator(".now")).containsText("It means Heart rate", PATIENTLY);
    showUntil(page.locator(".now"), "No held message waits");
    assertThat(page.locator("main")).containsText("admin said it means Heart rate");
    engineer.findsNoBarrier("a code that means something");
    await()
        .atMost(Duration.ofMinutes(1))
        .untilAsserted(
            () ->
                assertThat(teasel.history("V-4201").toString())
                    .contains("\"value\":71", "hl7:GATEWAY|WEST"));
  }

  private static String sendHeartRateInTheirWords(RunningApp app) {
    var at = Gateway.time(Instant.now().minusSeconds(300));
    return new Gateway(app)
        .send(
            "ORU^R01",
            "PID|1||P-V-4201",
            Gateway.visit("", "V-4201"),
            "OBR|1||F-4201^GATEWAY|SET^Vital signs^L|||" + at,
            "OBX|1|NM|HF-4201^Herzfrequenz^L||71|Schlaege|||||F");
  }

  @Test
  void shouldHaveNoFaultThatAxeFinds() {
    feeds.post("/api/assessments", "{\"id\": 7}");
    showUntil(page.locator(".refusal").first(), "missing-field");
    engineer.findsNoBarrier("/intake");
    page.locator(".refusal a").first().click();
    page.waitForURL(Pattern.compile(".*/intake/refusals/.*"));
    engineer.findsNoBarrier("a refusal");
  }

  /** Loads the page again until it says so: the list does not move under a hand. */
  private void showUntil(Locator place, String words) {
    for (int i = 0; i < 60; i++) {
      if (place.count() > 0 && place.innerText().contains(words)) {
        return;
      }
      page.waitForTimeout(500);
      page.reload();
    }
    assertThat(place).containsText(words);
  }
}
