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
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The board as a charge nurse sees it, in the machine's Chromium. */
@WithRunningApp
class BoardInABrowserIT {

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final LocatorAssertions.ContainsTextOptions PATIENTLY =
      new LocatorAssertions.ContainsTextOptions().setTimeout(30_000);

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
    ward = Ward.open(app, "wren");
    var anHourAgo = Instant.now().minus(Duration.ofHours(1));
    for (int bed = 1; bed <= 4; bed++) {
      var name = List.of("Alder", "Birch", "Cedar", "Damson").get(bed - 1) + ", Test";
      ward.admit("V-9" + bed, "A" + bed, name);
      ward.send(Sets.well("wren-first-" + bed, "V-9" + bed, anHourAgo));
    }
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
  static void closeTheWard() {
    if (playwright != null) {
      playwright.close();
    }
  }

  @BeforeEach
  void signIn() {
    Assumptions.assumeTrue(browser != null, "chromium is not installed");
    page = browser.newContext().newPage();
    page.navigate(at("/"));
    page.getByLabel("Name").fill(ward.account());
    page.getByLabel("Password").fill(Ward.PASSWORD);
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in")).click();
    page.waitForURL(Pattern.compile(".*/wards/" + ward.name() + "$"));
  }

  @AfterEach
  void leave() {
    if (page != null) {
      page.context().close();
    }
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

    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign out")).click();
    page.waitForURL(Pattern.compile(".*/sign-in.*"));
    page.navigate(at("/wards/" + ward.name()));
    page.waitForURL(Pattern.compile(".*/sign-in.*"));
  }

  /** Rules of WCAG 2.2 A and AA as axe-core checks them. */
  @Test
  void shouldHaveNoFaultThatAxeFinds() {
    for (var path : List.of("/wards/" + ward.name(), "/encounters/V-91", "/response")) {
      page.navigate(at(path));
      page.waitForLoadState();
      var found =
          new AxeBuilder(page)
              .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"))
              .analyze();
      assertThat(found.getViolations())
          .as(path)
          .extracting(violation -> violation.getId() + ": " + violation.getHelp())
          .isEmpty();
    }
  }

  private static String at(String path) {
    return app.address().resolve(path).toString();
  }
}
