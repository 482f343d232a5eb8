package org.driftward.deploy.whole;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.deploy.whole.EntryTablet.PATIENTLY;
import static org.driftward.deploy.whole.EntryTablet.values;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Bedside entry after the fact: corrected, retracted, entered late. */
@WithRunningApp
@WithChromium
class EntryMendedIT {

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
  void shouldCorrectWithAReasonAndThenRetract() {
    tablet.openPatient();
    page.locator("a.mend").first().tap();
    tablet.ready();
    assertThat(tablet.field("heart-rate")).hasValue("70");
    tablet.field("heart-rate").fill("107");
    page.locator("#save").tap();
    assertThat(page.locator("#faults")).containsText("Say why");
    page.locator("#reason").fill("digits swapped");
    page.locator("#save").tap();
    assertThat(page.locator("#done-title")).hasText("Corrected", PATIENTLY);
    var corrected = tablet.awaitStatus("amended");
    assertThat(corrected.get("revision").asInt()).isEqualTo(2);
    assertThat(corrected.get("reason").asText()).isEqualTo("digits swapped");
    assertThat(values(corrected)).containsEntry("heart-rate", "107");

    tablet.open("?correct=" + tablet.firstSet());
    page.locator(".retract summary").tap();
    page.locator("#why").fill("wrong patient");
    page.locator(".retract button").tap();

    assertThat(page.locator("main h1")).hasText("Retracted");
    var retracted = tablet.awaitStatus("retracted");
    assertThat(retracted.get("revision").asInt()).isEqualTo(3);
    tablet.openPatient();
    assertThat(page.locator("tr.retracted")).containsText("Retracted: wrong patient");
    assertThat(page.locator("tr.retracted s").first()).hasText("16");
    assertThat(page.locator("a.mend")).hasCount(0);
  }

  @Test
  void shouldShowBothTimesOfALateEntry() {
    tablet.open("?only=vital-signs");
    tablet.field("heart-rate").fill("88");
    page.locator("button[data-back='30']").tap();
    assertThat(page.locator("#late")).containsText("Late entry: taken");
    page.locator("#save").tap();
    assertThat(page.locator("#done-title")).hasText("Recorded", PATIENTLY);
    var late =
        tablet.awaitAssessments(2).stream()
            .filter(one -> values(one).get("heart-rate").equals("88"))
            .findFirst()
            .orElseThrow();
    var taken = Instant.parse(late.get("takenAt").asText());
    var recorded = Instant.parse(late.get("recordedAt").asText());
    assertThat(Duration.between(taken, recorded))
        .isBetween(Duration.ofMinutes(29), Duration.ofMinutes(31));
    tablet.openPatient();
    assertThat(page.locator(".record tbody tr").first()).containsText("recorded");
  }
}
