package org.driftward.deploy.running;

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

  /** As root there is no sandbox; nothing but loopback is to be called. */
  private static final List<String> ARGUMENTS =
      List.of(
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync");

  private static final LocatorAssertions.ContainsTextOptions PATIENTLY =
      new LocatorAssertions.ContainsTextOptions().setTimeout(30_000);

<<<<<<< HEAD:deploy/src/test/java/org/driftward/deploy/running/BoardInABrowserIT.java
=======
  private static RunningApp app;
  private static Ward ward;
>>>>>>> deploy:deploy/src/test/java/org/driftward/deploy/whole/BoardInABrowserIT.java
  private static Playwright playwright;
  private static Browser browser;

  private final RunningApp app;
  private final Ward ward;
  private Page page;

<<<<<<< HEAD:deploy/src/test/java/org/driftward/deploy/running/BoardInABrowserIT.java
  BoardInABrowserIT(RunningApp app) {
    this.app = app;
    this.ward = Ward.open(app, "wren");
    var anHourAgo = Instant.now().minus(Duration.ofHours(1));
    for (var name : List.of("Alder", "Birch", "Cedar", "Damson")) {
      assertThat(ward.admit("V-" + name, name.substring(0, 1), name + ", Test").status())
          .isEqualTo(200);
      ward.send(Sets.well("first-" + name, "V-" + name, anHourAgo));
=======
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
>>>>>>> deploy:deploy/src/test/java/org/driftward/deploy/whole/BoardInABrowserIT.java
    }
  }

  @BeforeAll
  static void openTheBrowser() {
    Assumptions.assumeTrue(Files.isExecutable(CHROMIUM), "chromium is not installed");
    playwright =
        Playwright.create(
            new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
    browser =
        playwright
            .chromium()
            .launch(new BrowserType.LaunchOptions().setExecutablePath(CHROMIUM).setArgs(ARGUMENTS));
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
    page = browser.newContext().newPage();
<<<<<<< HEAD:deploy/src/test/java/org/driftward/deploy/running/BoardInABrowserIT.java
    page.navigate(app.address().toString());
    page.getByLabel("Name").fill("charge.wren");
    page.getByLabel("Password").fill(Ward.PASSWORD);
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in")).click();
    page.waitForURL(Pattern.compile(".*/wards/wren$"));
=======
    page.navigate(at("/"));
    page.getByLabel("Name").fill(ward.account());
    page.getByLabel("Password").fill(Ward.PASSWORD);
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign in")).click();
    page.waitForURL(Pattern.compile(".*/wards/" + ward.name() + "$"));
>>>>>>> deploy:deploy/src/test/java/org/driftward/deploy/whole/BoardInABrowserIT.java
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

<<<<<<< HEAD:deploy/src/test/java/org/driftward/deploy/running/BoardInABrowserIT.java
    ward.send(Sets.veryIll("second-Cedar", "V-Cedar", Instant.now()));
=======
    ward.send(Sets.ill("wren-second-3", "V-93", Instant.now()));
>>>>>>> deploy:deploy/src/test/java/org/driftward/deploy/whole/BoardInABrowserIT.java

    var first = page.locator("#board li").first();
    assertThat(first).containsText("Cedar", PATIENTLY);
    assertThat(first).containsText("13", PATIENTLY);
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
<<<<<<< HEAD:deploy/src/test/java/org/driftward/deploy/running/BoardInABrowserIT.java
    page.navigate(app.address().resolve("/wards/wren").toString());
=======
    page.navigate(at("/wards/" + ward.name()));
>>>>>>> deploy:deploy/src/test/java/org/driftward/deploy/whole/BoardInABrowserIT.java
    page.waitForURL(Pattern.compile(".*/sign-in.*"));
  }

  /** Rules of WCAG 2.2 A and AA as axe-core checks them. */
  @Test
  void shouldHaveNoFaultThatAxeFinds() {
<<<<<<< HEAD:deploy/src/test/java/org/driftward/deploy/running/BoardInABrowserIT.java
    for (var path : List.of("/wards/wren", "/encounters/V-Alder", "/response")) {
      page.navigate(app.address().resolve(path).toString());
=======
    for (var path : List.of("/wards/" + ward.name(), "/encounters/V-91", "/response")) {
      page.navigate(at(path));
>>>>>>> deploy:deploy/src/test/java/org/driftward/deploy/whole/BoardInABrowserIT.java
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
