package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.deploy.whole.Visitor.PATIENTLY;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The board as a charge nurse sees it. */
@WithRunningApp
@WithChromium
class BoardInABrowserIT {

  private static Ward ward;
  private Visitor nurse;
  private Page page;

  @BeforeAll
  static void openTheWard(RunningApp app) {
    ward = Ward.open(app, "wren");
    var anHourAgo = Instant.now().minus(Duration.ofHours(1));
    for (int bed = 1; bed <= 4; bed++) {
      var name = List.of("Alder", "Birch", "Cedar", "Damson").get(bed - 1) + ", Test";
      ward.admit("V-9" + bed, "A" + bed, name);
      ward.send(Sets.well("wren-first-" + bed, "V-9" + bed, anHourAgo));
    }
  }

  @BeforeEach
  void signIn(RunningApp app, Browser browser) {
    nurse = Visitor.at(app, browser);
    page = nurse.page();
    nurse.signIn(ward.account());
    assertThat(page).hasURL(Pattern.compile(".*/wards/" + ward.name() + "$"));
  }

  @AfterEach
  void leave() {
    nurse.close();
  }

  @Test
  void shouldShowAPatientRiseToTheTopAndTakeTheChargeNursesAnswer() {
    assertThat(page.locator("#board")).containsText("Cedar", PATIENTLY);
    page.evaluate("() => { window.sameDocument = true; }");

    ward.send(Sets.ill("wren-second-3", "V-93", Instant.now()));

    var first = page.locator("#board li").first();
    assertThat(first).containsText("Cedar", PATIENTLY);
    assertThat(first).containsText("9", PATIENTLY);
    assertThat(first).containsText("Nobody yet", PATIENTLY);
    assertThat(page.locator(".ward-line")).containsText("of 4 patients ask", PATIENTLY);
    var clockBefore = first.locator(".hand time[data-deadline]").first().getAttribute("datetime");

    first.getByRole(AriaRole.BUTTON).first().click();

    assertThat(first).containsText("Tamsin Orchard", PATIENTLY);
    var clock = first.locator(".hand time[data-deadline]").first();
    assertThat(clock)
        .not()
        .hasAttribute(
            "datetime",
            clockBefore,
            new LocatorAssertions.HasAttributeOptions().setTimeout(30_000));
    assertThat(page.evaluate("() => window.sameDocument === true")).isEqualTo(true);

    nurse.press("Sign out");
    page.waitForURL(Pattern.compile(".*/sign-in.*"));
    nurse.open("/wards/" + ward.name());
    page.waitForURL(Pattern.compile(".*/sign-in.*"));
  }

  /**
   * From three metres, at 03:00: the patients are what a person sees, not what stands round them.
   */
  @Test
  void shouldShowTheFirstPatientWithoutScrollingOnAPhone() {
    page.setViewportSize(390, 844);
    assertThat(page.locator("#board li").first()).isVisible();

    assertThat(page.locator("#board li").first().boundingBox().y).isLessThan(844 - 200);
  }

  @Test
  void shouldSaySoundIsOffUntilAPersonSwitchesItOn() {
    var sound = page.locator("#sound-switch");
    assertThat(sound).hasText("Sound off");

    sound.click();
    assertThat(sound).hasText("Sound on");
    nurse.press("Pause 2 min");
    assertThat(sound).hasText("Sound paused");
    nurse.press("Sound again");
    assertThat(sound).hasText("Sound on");
    sound.click();

    assertThat(sound).hasText("Sound off");
    assertThat(page.locator("#sound-pause")).isHidden();
  }

  @Test
  void shouldHaveNoFaultThatAxeFinds() {
    for (var path : List.of("/wards/" + ward.name(), "/encounters/V-91", "/response")) {
      nurse.open(path);
      nurse.findsNoBarrier(path);
    }
  }
}
