package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.deploy.whole.Visitor.PATIENTLY;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A shift hands over, a response team records a call, and what happened is written down. */
@WithRunningApp
@WithChromium
class PeopleInABrowserIT {

  private static final String NEXT = "late.plover";
  private static final String TEAM = "team.plover";

  private static RunningApp app;
  private static Ward ward;
  private Browser browser;
  private Visitor person;
  private Page page;

  @BeforeAll
  static void openTheWard(RunningApp shared) {
    app = shared;
    ward = Ward.open(app, "plover");
    ward.account(app, NEXT, "Ilse Brandt", "charge");
    ward.account(app, TEAM, "Marek Dunn", "response");
    ward.admit("V-801", "1", "Elder, Test");
    ward.admit("V-802", "2", "Fir, Test");
    ward.admit("V-803", "3", "Gorse, Test");
    ward.send(Sets.well("plover-1", "V-801", Instant.now().minus(Duration.ofHours(1))));
    ward.send(Sets.ill("plover-2", "V-802", Instant.now()));
  }

  @BeforeEach
  void take(Browser shared) {
    browser = shared;
  }

  @AfterEach
  void leave() {
    if (person != null) {
      person.close();
    }
  }

  @Test
  void shouldHandTheWardOverFromTheFirstDutyToTheSecondSignature() {
    signIn(ward.account());
    person.open("/wards/plover/staff");
    assertThat(page.locator("main")).containsText("Nobody is in charge of this ward");
    person.press("Begin");
    assertThat(page.locator(".shifts")).containsText("Tamsin Orchard");
    person.findsNoBarrier("on duty");
    person.open("/wards/plover/handover");
    assertThat(page.locator(".sheet")).containsText("Fir, Test", PATIENTLY);
    person.findsNoBarrier("shift hand-over");
    page.getByLabel("Also to be said").fill("bed 1 goes home tomorrow");
    person.press("Sign as the giver");
    assertThat(page.locator("#signed")).containsText("Not received yet");

    signIn(NEXT);
    person.open("/wards/plover/staff");
    person.press("I take over");
    assertThat(page.locator(".shifts li")).hasCount(1);
    assertThat(page.locator(".shifts")).containsText("Ilse Brandt");
    person.open("/wards/plover/handover");
    person.press("Sign as the receiver");

    assertThat(page.locator("#signed")).containsText("Received by Ilse Brandt");
    var kept = app.as(NEXT, Ward.PASSWORD).get("/api/wards/plover/handovers").json().get(0);
    assertThat(kept.get("receiver").asText()).isEqualTo(NEXT);
    assertThat(kept.get("note").asText()).isEqualTo("bed 1 goes home tomorrow");
  }

  @Test
  void shouldRecordACallAndHandThePatientOver() {
    signIn(TEAM);
    assertThat(page.locator("#queue")).containsText("Fir", PATIENTLY);
    person.follow("call record Fir");
    person.press("Received");
    assertThat(page.locator("main")).containsText("led by Marek Dunn");
    page.getByText("Who called the team").click();
    page.getByLabel("Called by").selectOption("family");
    person.press("Record who called");
    assertThat(page.locator("main")).containsText("Family or visitor");
    person.press("At the bedside");
    page.getByLabel("Intervention").selectOption("oxygen");
    page.locator("#treatment-note").fill("4 L/min");
    person.press("Record the intervention");
    assertThat(page.locator("main")).containsText("Oxygen: 4 L/min");
    assertThat(page.locator("main")).containsText("Trigger, set of");
    person.findsNoBarrier("call record");
    page.locator("#plan").fill("a set every 30 min, review at noon");
    page.getByLabel("Next set at").fill("23:59");
    person.press("Finish the call");
    assertThat(page.locator("main")).containsText("Stays, with a plan");

    person.open("/encounters/V-802/handover");
    person.findsNoBarrier("hand-over of a patient");
    page.locator("#assessment").fill("likely chest infection");
    page.getByLabel("The recommendation is mine").check();
    page.locator("#receiver").fill("Dr Six");
    person.press("Hand over");
    assertThat(page.locator("#earlier")).containsText("likely chest infection");
    person.open("/encounters/V-802");
    person.findsNoBarrier("patient after a call");
  }

  @Test
  void shouldRecordWhatHappenedToAPatient() {
    signIn(ward.account());
    person.open("/encounters/V-803");
    person.follow("Events");
    assertThat(page.locator("main")).containsText("Nothing has been recorded");
    page.getByLabel("What happened").selectOption("intensive-care");
    page.getByLabel("or the move planned").check();
    page.getByLabel("Note").fill("after theatre");
    person.press("Record the event");

    assertThat(page.locator(".eventlist")).containsText("Move to intensive care");
    assertThat(page.locator(".eventlist")).containsText("planned; after theatre");
    person.findsNoBarrier("events");
    var kept = ward.nurse().get("/api/encounters/V-803/events").json();
    assertThat(kept.get(0).get("kind").asText()).isEqualTo("intensive-care");
    assertThat(kept.get(0).get("expected").asBoolean()).isTrue();
  }

  @Test
  void shouldLeaveACopyForDowntimeThatSaysEveryPatient() {
    signIn(ward.account());
    person.open("/wards/plover/downtime");

    assertThat(page.locator(".paper")).containsText("Elder");
    assertThat(page.locator(".paper")).containsText("Gorse");
    person.findsNoBarrier("copy for downtime");
  }

  private void signIn(String account) {
    leave();
    person = Visitor.at(app, browser);
    page = person.page();
    person.signIn(account);
  }
}
