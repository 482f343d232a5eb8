package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.deploy.whole.Visitor.PATIENTLY;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Instant;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.driftward.deploy.whole.Ear.Pulse;
import org.junit.jupiter.api.Test;

/**
 * The tone of the board in the machine's Chromium: off until a person switches it on, sounding for
 * what nobody has answered, silent as soon as somebody has.
 */
@WithRunningApp
@WithChromium
class SoundInABrowserIT {

  @Test
  void shouldSoundANewAlarmUntilSomebodyAnswers(RunningApp app, Browser browser) {
    var ward = Ward.open(app, "siskin");
    ward.admit("V-81", "S1", "Hazel, Test");
    try (var context = browser.newContext()) {
      var ear = Ear.at(context);
      var page = ear.page();
      signIn(app, ward, page);
      var state = page.locator("#sound-state");
      assertThat(state).containsText("Sound off");
      page.locator("#sound-switch").click();
      assertThat(state).containsText("Sound on", PATIENTLY);
      assertThat(ear.isSilentFor(1_000)).as("nobody is in danger yet").isTrue();

      var kept =
          page.waitForResponse(
              Pattern.compile(".*/sounds/\\d+$"),
              new Page.WaitForResponseOptions().setTimeout(60_000),
              () -> ward.send(Sets.ill("siskin-1", "V-81", Instant.now())));

      assertThat(kept.status()).as("the record keeps that it sounded").isEqualTo(204);
      hasThePatternOfHighPriority(ear.pulses(10));
      ear.awaitSound();

      var episode = ward.nurse().get("/api/encounters/V-81").json().at("/episode/id").asText();
      assertThat(ward.nurse().post("/api/episodes/" + episode + "/acknowledge", "{}").status())
          .isEqualTo(200);
      ear.await("() => document.getElementById('tones').children.length === 0");
      page.waitForTimeout(500);
      assertThat(ear.isSilentFor(6_000)).as("longer than the rest between two bursts").isTrue();
    }
  }

  @Test
  void shouldPauseInSightAndTellThePatientsPageThatItSounded(RunningApp app, Browser browser) {
    var ward = Ward.open(app, "linnet");
    ward.admit("V-82", "L1", "Rowan, Test");
    ward.send(Sets.ill("linnet-1", "V-82", Instant.now()));
    try (var context = browser.newContext()) {
      var ear = Ear.at(context);
      var page = ear.page();
      signIn(app, ward, page);
      assertThat(page.locator("#board")).containsText("Nobody yet", PATIENTLY);
      page.locator("#sound-switch").click();
      ear.awaitSound();

      page.locator("#sound-pause").click();

      var state = page.locator("#sound-state");
      assertThat(state).containsText("Sound paused", PATIENTLY);
      assertThat(page.locator("#sound-pause")).containsText("Sound again (", PATIENTLY);
      page.waitForTimeout(500);
      assertThat(ear.isSilentFor(6_000)).isTrue();
      page.locator("#sound-pause").click();
      assertThat(state).containsText("Sound on", PATIENTLY);
      ear.awaitSound();

      page.navigate(app.address().resolve("/encounters/V-82").toString());
      assertThat(page.locator(".told").first())
          .containsText("delivered page of Tamsin Orchard, tone", PATIENTLY);
    }
  }

  /**
   * The ranges that IEC 60601-1-8:2006 gives a burst of high priority in its tables 3 and 4, from
   * memory: ten pulses of 75 to 200 ms, 50 to 125 ms between two neighbours, a longer silence after
   * the third and the eighth, 0.35 to 1.3 s after the fifth, and a fundamental of 150 to 1000 Hz.
   */
  private static void hasThePatternOfHighPriority(List<Pulse> pulses) {
    assertThat(pulses)
        .allSatisfy(pulse -> assertThat(pulse.length()).isBetween(0.075, 0.2))
        .allSatisfy(pulse -> assertThat(pulse.hertz()).isBetween(150.0, 1000.0));
    var gaps =
        IntStream.range(1, pulses.size())
            .mapToObj(i -> pulses.get(i).from() - pulses.get(i - 1).to())
            .toList();
    var neighbours = IntStream.of(0, 1, 3, 5, 6, 8).mapToObj(gaps::get).toList();
    assertThat(neighbours).allSatisfy(gap -> assertThat(gap).isBetween(0.05, 0.125));
    double longer = 2 * gaps.get(0) + pulses.get(0).length();
    assertThat(gaps.get(2)).isCloseTo(longer, within(0.001));
    assertThat(gaps.get(7)).isCloseTo(longer, within(0.001));
    assertThat(gaps.get(4)).isBetween(0.35, 1.3);
  }

  private static void signIn(RunningApp app, Ward ward, Page page) {
    page.setDefaultTimeout(60_000);
    page.navigate(app.address().resolve("/").toString());
    page.getByLabel("Name").fill(ward.account());
    page.getByLabel("Password").fill(Ward.PASSWORD);
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in")).click();
    page.waitForURL(Pattern.compile(".*/wards/" + ward.name() + "$"));
  }
}
