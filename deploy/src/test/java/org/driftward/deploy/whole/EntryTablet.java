package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A tablet held upright at the bed of a patient of its own, who has one earlier set, with the
 * ward's nurse signed in.
 */
final class EntryTablet implements AutoCloseable {

  static final LocatorAssertions.HasTextOptions PATIENTLY =
      new LocatorAssertions.HasTextOptions().setTimeout(30_000);

  private static final int WIDTH = 768;
  private static final int HEIGHT = 1024;
  private static final Duration SOON = Duration.ofSeconds(30);
  private static final AtomicInteger BEDS = new AtomicInteger();

  private final Visitor nurse;
  private final Ward ward;
  private final int bed;

  private EntryTablet(Visitor nurse, Ward ward, int bed) {
    this.nurse = nurse;
    this.ward = ward;
    this.bed = bed;
  }

  static EntryTablet at(RunningApp app, Browser browser) {
    return at(app, browser, true);
  }

  /**
   * @param scripts whether the browser runs any
   */
  static EntryTablet at(RunningApp app, Browser browser, boolean scripts) {
    var device =
        new Browser.NewContextOptions()
            .setViewportSize(WIDTH, HEIGHT)
            .setHasTouch(true)
            .setIsMobile(true)
            .setJavaScriptEnabled(scripts);
    var ward = Ward.open(app, "linnet");
    var tablet = new EntryTablet(Visitor.at(app, browser, device), ward, BEDS.incrementAndGet());
    tablet.admit();
    tablet.signIn();
    return tablet;
  }

  private void admit() {
    ward.admit(encounter(), "B" + bed, "Elder, Test " + bed);
    var taken = Instant.now().minus(Duration.ofMinutes(50));
    ward.send(Sets.well(firstSet(), encounter(), taken));
    await()
        .atMost(SOON)
        .until(() -> ward.nurse().answers("/api/encounters/" + encounter()) && scored());
  }

  private boolean scored() {
    return !ward.nurse().get("/api/encounters/" + encounter()).json().get("snapshot").isNull();
  }

  void signIn() {
    nurse.signIn(ward.account());
  }

  Page page() {
    return nurse.page();
  }

  BrowserContext context() {
    return nurse.context();
  }

  Ward ward() {
    return ward;
  }

  String encounter() {
    return "V-linnet-" + bed;
  }

  /** Id of the set taken before the test. */
  String firstSet() {
    return "linnet-first-" + bed;
  }

  void open(String query) {
    nurse.open("/encounters/" + encounter() + "/assess" + query);
    ready();
  }

  void openWithoutScripts() {
    nurse.open("/encounters/" + encounter() + "/assess");
  }

  void openPatient() {
    nurse.open("/encounters/" + encounter());
  }

  void ready() {
    page().waitForSelector("html[data-ready=assess]");
  }

  Locator field(String name) {
    return page().locator("[data-field='" + name + "'] input");
  }

  Locator chip(String name, int nth) {
    return page().locator("[data-field='" + name + "'] .chip").nth(nth);
  }

  Locator chest() {
    return page().locator("#region-chest");
  }

  /** NEWS2 7, every core observation and air; Next and each touched word lead on to the next. */
  void takeVitalSigns(Hand hand) {
    List.of("24", "93").forEach(hand::type);
    hand.touch(chip("inspired-oxygen", 0));
    List.of("108", "64", "96").forEach(hand::type);
    hand.touch(chip("consciousness", 0));
    hand.type("38.4");
  }

  /** What of patients is left on the device. */
  List<?> kept() {
    return (List<?>)
        page().evaluate("() => Object.keys(localStorage).filter(key => /draft|unsent/.test(key))");
  }

  void findsNoBarrier(String state) {
    // As tall as it is: of a field under the bar at the foot axe would measure what looks out.
    var height = (Integer) page().evaluate("() => document.documentElement.scrollHeight");
    page().setViewportSize(WIDTH, Math.max(height, HEIGHT));
    nurse.findsNoBarrier(state);
    page().setViewportSize(WIDTH, HEIGHT);
  }

  /** Newest first. */
  List<JsonNode> awaitAssessments(int count) {
    return await().atMost(SOON).until(this::assessments, all -> all.size() >= count);
  }

  JsonNode awaitStatus(String status) {
    return await()
        .atMost(SOON)
        .until(
            this::assessments,
            all -> all.stream().anyMatch(one -> one.get("status").asText().equals(status)))
        .get(0);
  }

  /** As they reached the record, newest first. */
  List<JsonNode> assessments() {
    var all = new ArrayList<JsonNode>();
    ward.history(encounter()).get("assessments").forEach(all::add);
    return all;
  }

  void awaitScore(int total) {
    await()
        .atMost(SOON)
        .untilAsserted(() -> assertThat(score().get("low").asInt()).isEqualTo(total));
  }

  private JsonNode score() {
    var answer = ward.nurse().get("/api/encounters/" + encounter()).json();
    return answer.get("snapshot").get("scores").get(0);
  }

  static Map<String, String> values(JsonNode assessment) {
    var values = new HashMap<String, String>();
    for (var finding : assessment.get("findings")) {
      for (var kind : List.of("value", "grade", "coded")) {
        if (finding.has(kind)) {
          values.put(finding.get("code").asText(), finding.get(kind).asText());
        }
      }
    }
    return values;
  }

  @Override
  public void close() {
    nurse.close();
  }
}
