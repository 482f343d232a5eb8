package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.assertions.LocatorAssertions.ContainsTextOptions;
import com.microsoft.playwright.assertions.LocatorAssertions.HasCountOptions;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Problem;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same image started twice with fewer roles, on a broker and a database that belong to neither:
 * together they do what one does alone, each serves only its own, and when one is gone the pages of
 * the other say so.
 */
class RolesIT {

  private static final Duration PATIENCE = Duration.ofMinutes(2);

  /** Silence of half a minute makes a process count as gone; then the machine may be slow. */
  private static final ContainsTextOptions SOON =
      new ContainsTextOptions().setTimeout((double) PATIENCE.toMillis());

  private static final HasCountOptions SOON_SO_MANY =
      new HasCountOptions().setTimeout((double) PATIENCE.toMillis());

  @TempDir static Path folder;

  private static Outside outside;
  private static RunningApp front;
  private static RunningApp back;

  @BeforeAll
  static void start() {
    outside = new Outside(folder);
    front = start("front", "ingest,dashboard");
    back = startBack();
  }

  @AfterAll
  static void stop() {
    back.close();
    front.close();
    outside.close();
  }

  @Test
  void shouldShareTheWorkAndServeOnlyWhatEachPlays() {
    var ward = Ward.open(front, "alder");
    ward.admit("V-1", "1", "Tolliver, Maud");
    ward.send(Sets.veryIll("ill", "V-1", Instant.now().minusSeconds(60)));

    ward.awaitCard(
        "V-1",
        PATIENCE,
        card -> {
          assertThat(card.at("/score/low").asInt()).isEqualTo(13);
          assertThat(card.at("/episode/state").asText()).isEqualTo("open");
        });
    var elsewhere = Ward.of(back, "alder").nurse();
    for (var path : List.of("/wards", "/api/wards", "/api/encounters/V-1")) {
      assertThat(elsewhere.get(path).status()).as(path).isEqualTo(404);
    }
    var refused = elsewhere.post("/api/assessments", "{}");
    assertThat(refused.status()).isEqualTo(404);
    assertThat(refused.type()).startsWith(Problem.MEDIA_TYPE);
    assertThat(elsewhere.get("/api/episodes").status()).isEqualTo(200);
    assertThat(ward.nurse().get("/api/episodes").status()).isEqualTo(404);
    assertThat(folder.resolve("front/postgres")).doesNotExist();
    assertThat(folder.resolve("front/kafka")).doesNotExist();
  }

  /** Scores and alarms come from the process that is killed. */
  @Test
  @WithChromium
  void shouldSayOnOpenPagesThatNobodyWatchesUntilSomebodyDoes(Browser browser) {
    var ward = Ward.open(front, "birch");
    ward.admit("V-2", "2", "Ferrar, Osric");
    ward.send(Sets.well("well", "V-2", Instant.now().minusSeconds(600)));
    try (var nurse = Visitor.at(front, browser)) {
      nurse.signIn(ward.account());
      var page = nurse.page();
      var warnings = page.locator(".warnings");
      assertThat(page.locator("#board .score b")).containsText("0", SOON);
      assertThat(page.locator(".warning")).hasCount(0, SOON_SO_MANY);

      back.kill();
      ward.send(Sets.veryIll("worse", "V-2", Instant.now()));

      assertThat(warnings).containsText("No alarm is raised or sent", SOON);
      assertThat(warnings).containsText("has not been scored: birch bed 2", SOON);
      nurse.findsNoBarrier("a board that nobody watches");
      nurse.open("/encounters/V-2");
      assertThat(warnings).containsText("No alarm is raised or sent");
      assertThat(warnings).containsText("has not been scored: birch bed 2");
      nurse.findsNoBarrier("a patient whom nobody watches");

      back = startBack();

      assertThat(page.locator("#patient")).containsText("Nobody yet", SOON);
      assertThat(page.locator(".warning")).hasCount(0, SOON_SO_MANY);
    }
  }

  private static RunningApp startBack() {
    return start("back", "scoring,alerts");
  }

  private static RunningApp start(String name, String roles) {
    var environment = outside.environment();
    environment.put("DRIFTWARD_ROLES", roles);
    return RunningApp.start(folder.resolve(name), environment);
  }
}
