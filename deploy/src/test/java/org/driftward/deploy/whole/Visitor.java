package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import java.util.List;

/** Somebody in front of a browser of their own, with its cookies and what it keeps. */
final class Visitor implements AutoCloseable {

  /** As long as an assessment may take from intake to a page on a busy machine. */
  static final LocatorAssertions.ContainsTextOptions PATIENTLY =
      new LocatorAssertions.ContainsTextOptions().setTimeout(60_000);

  private static final List<String> WCAG =
      List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

  private final RunningApp app;
  private final BrowserContext context;
  private final Page page;

  private Visitor(RunningApp app, BrowserContext context) {
    this.app = app;
    this.context = context;
    this.page = context.newPage();
  }

  static Visitor at(RunningApp app, Browser browser) {
    return at(app, browser, new Browser.NewContextOptions());
  }

  /**
   * @param device size of the screen, touch, scripts
   */
  static Visitor at(RunningApp app, Browser browser, Browser.NewContextOptions device) {
    return new Visitor(app, browser.newContext(device));
  }

  Page page() {
    return page;
  }

  BrowserContext context() {
    return context;
  }

  /** With the password of every account of {@link Ward}; returns on the person's start page. */
  void signIn(String account) {
    signIn(account, Ward.PASSWORD);
  }

  void signIn(String account, String password) {
    open("/sign-in");
    page.getByLabel("Name").fill(account);
    page.getByLabel("Password").fill(password);
    press("Sign in");
    page.waitForURL(url -> !url.contains("/sign-in") && !url.contains("/j_security_check"));
  }

  void open(String path) {
    page.navigate(app.address().resolve(path).toString());
  }

  /** The first button of that name. */
  void press(String name) {
    page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name)).first().click();
  }

  /** The first link of that name. */
  void follow(String name) {
    page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName(name)).first().click();
  }

  /** By the rules of WCAG 2.2 A and AA as far as axe-core checks them, in day and night dress. */
  void findsNoBarrier(String what) {
    for (var dress : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
      page.emulateMedia(
          new Page.EmulateMediaOptions()
              .setColorScheme(dress)
              .setReducedMotion(ReducedMotion.REDUCE));
      var found = new AxeBuilder(page).withTags(WCAG).analyze();
      assertThat(found.getViolations())
          .as(what + ", " + dress)
          .extracting(Visitor::words)
          .isEmpty();
    }
  }

  private static String words(Rule rule) {
    var where = rule.getNodes().stream().limit(3).map(node -> node.getHtml()).toList();
    return rule.getId() + ": " + rule.getHelp() + " " + where;
  }

  @Override
  public void close() {
    context.close();
  }
}
