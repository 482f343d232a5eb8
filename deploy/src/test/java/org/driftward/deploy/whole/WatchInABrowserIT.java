package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.nio.file.Path;
import java.time.Instant;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Pages come from one process, scores and alarms from another, which is killed: open pages say so
 * by themselves, and stop saying so when the other is back.
 */
@WithChromium
class WatchInABrowserIT {

  private static final String UNWATCHED = "No alarm is raised or sent";
  private static final String UNSCORED = "has not been scored: alder bed 1";

  /** Silence of half a minute makes a process count as gone; then the machine may be slow. */
  private static final LocatorAssertions.ContainsTextOptions SOON =
      new LocatorAssertions.ContainsTextOptions().setTimeout(120_000);

  @TempDir Path folder;

  @Test
  void shouldSayThatWhatIsQuietIsNotWatched(Browser browser) {
    try (var outside = new Outside(folder);
        var front = start(outside, "front", "ingest,dashboard")) {
      var ward = Ward.open(front, "alder");
      try (var nurse = Visitor.at(front, browser)) {
        nurse.signIn(ward.account());
        var page = nurse.page();
        try (var back = start(outside, "back", "scoring,alerts")) {
          ward.admit("V-1", "1", "Tolliver, Maud");
          ward.send(Sets.well("well", "V-1", Instant.now().minusSeconds(600)));
          assertThat(page.locator("#board .score b")).containsText("0", SOON);
          says(page, 0);

          back.kill();
        }
        ward.send(Sets.veryIll("ill", "V-1", Instant.now()));

        assertThat(page.locator(".warnings")).containsText(UNWATCHED, SOON);
        assertThat(page.locator(".warnings")).containsText(UNSCORED, SOON);
        nurse.findsNoBarrier("a board that nobody watches");
        nurse.open("/encounters/V-1");
        assertThat(page.locator(".warnings")).containsText(UNWATCHED);
        assertThat(page.locator(".warnings")).containsText(UNSCORED);
        nurse.findsNoBarrier("a patient whom nobody watches");
        try (var back = start(outside, "back", "scoring,alerts")) {
          assertThat(page.locator("#patient")).containsText("Nobody yet", SOON);
          says(page, 0);
          var episodes = Ward.of(back, ward.name()).nurse().get("/api/episodes");
          Assertions.assertThat(episodes.json().toString()).contains("V-1");
        }
      }
    }
  }

  private static void says(Page page, int warnings) {
    assertThat(page.locator(".warning"))
        .hasCount(warnings, new LocatorAssertions.HasCountOptions().setTimeout(120_000));
  }

  private RunningApp start(Outside outside, String name, String roles) {
    var environment = outside.environment();
    environment.put("DRIFTWARD_ROLES", roles);
    return RunningApp.start(folder.resolve(name), environment);
  }
}
