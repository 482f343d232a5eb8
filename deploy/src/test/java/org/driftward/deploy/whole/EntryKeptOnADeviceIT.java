package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.deploy.whole.EntryTablet.PATIENTLY;
import static org.driftward.deploy.whole.EntryTablet.values;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What bedside entry keeps while it is not saved, or saved and not sent. */
@WithRunningApp
@WithChromium
class EntryKeptOnADeviceIT {

  private EntryTablet tablet;
  private Page page;

  @BeforeEach
  void takeATablet(RunningApp app, Browser browser) {
    tablet = EntryTablet.at(app, browser);
    page = tablet.page();
  }

  @AfterEach
  void putItBack() {
    tablet.close();
  }

  @Test
  void shouldKeepTheDraftOverAReloadAndASignOut() {
    tablet.open("");
    tablet.field("heart-rate").fill("88");
    page.locator("#region-skin .touch input").tap();

    page.reload();
    tablet.ready();
    assertThat(page.locator("#restored")).containsText("Your draft of");
    assertThat(tablet.field("heart-rate")).hasValue("88");

    page.locator("form[action='/sign-out'] button").tap();
    page.waitForURL(Pattern.compile(".*/sign-in.*"));
    tablet.signIn();
    tablet.open("");
    assertThat(tablet.field("heart-rate")).hasValue("88");
    assertThat(page.locator("#region-skin .touch input")).isChecked();
    page.locator("#save").tap();
    assertThat(page.locator("#done-title")).hasText("Recorded", PATIENTLY);
    assertThat(tablet.kept()).isEmpty();
  }

  @Test
  void shouldSayThatItIsNotYetSentAndSendWhenTheLineIsBack() {
    tablet.open("?only=vital-signs");
    tablet.context().setOffline(true);
    tablet.field("heart-rate").fill("88");
    assertThat(page.locator("#foreseen")).containsText("No preview");
    page.locator("#save").tap();
    assertThat(page.locator("#done-title")).hasText("Not yet sent");
    assertThat(page.locator("#unsent")).containsText("Not yet sent: 1 assessment");
    assertThat(tablet.assessments().size()).isEqualTo(1);

    tablet.context().setOffline(false);

    assertThat(page.locator("#done-title")).hasText("Recorded", PATIENTLY);
    assertThat(page.locator("#unsent")).isHidden();
    assertThat(values(tablet.awaitAssessments(2).get(0))).containsEntry("heart-rate", "88");
    assertThat(tablet.kept()).isEmpty();
  }

  /** The server hears the first sending and the answer is lost; the finger taps twice besides. */
  @Test
  void shouldMakeOneAssessmentOfALostAnswerAndADoubleTap() {
    tablet.open("?only=vital-signs");
    var sent = new AtomicInteger();
    page.route("**/api/assessments", route -> loseTheFirstAnswer(route, sent));
    tablet.field("heart-rate").fill("88");

    page.locator("#save").dblclick();

    assertThat(page.locator("#done-title")).hasText("Recorded", PATIENTLY);
    assertThat(sent.get()).isGreaterThanOrEqualTo(2);
    tablet.awaitAssessments(2);
    page.waitForTimeout(1500);
    assertThat(tablet.assessments().size()).isEqualTo(2);
  }

  private static void loseTheFirstAnswer(Route route, AtomicInteger sent) {
    if (sent.incrementAndGet() == 1) {
      assertThat(route.fetch().status()).isEqualTo(202);
      route.abort();
    } else {
      route.resume();
    }
  }
}
