package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import org.driftward.dashboard.contract.Setting;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.dashboard.core.WardReader.WardLine;
import org.driftward.dashboard.screen.audit.SampleMeasures;
import org.driftward.dashboard.screen.entry.EntryScreen;
import org.driftward.dashboard.screen.entry.PreviewScreen;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Derivations;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.scoring.contract.Preview.Outlook;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages as they reach a browser. Each is also left in {@code target/pages} to be looked at. */
class RenderedPagesTest {

  static List<String> everyPage() {
    return List.of(
        board(),
        queue(),
        patient(null),
        assess(null),
        assess(first()),
        wards(),
        audit(),
        measure(),
        trial(),
        signIn(true));
  }

  @ParameterizedTest
  @MethodSource("everyPage")
  void shouldSayOnEveryPageThatItIsADemonstrationAndOnlyAdvises(String html) {
    assertThat(html)
        .contains("Every patient and every person here is invented")
        .contains("it is not a certified medical device")
        .contains("Clinical judgement and local policy come first")
        .contains("When it is down");
  }

  @ParameterizedTest
  @MethodSource("everyPage")
  void shouldObeyItsOwnContentSecurityPolicy(String html) {
    assertThat(html)
        .doesNotContainPattern("<script(?![^>]*src=)")
        .doesNotContainPattern("\\son[a-z]+=")
        .doesNotContainPattern("\\sstyle=");
  }

  @ParameterizedTest
  @MethodSource("everyPage")
  void shouldUseEveryIdOnce(String html) {
    var ids = Pattern.compile("\\sid=\"([^\"]+)\"").matcher(html).results().map(m -> m.group(1));
    assertThat(ids).doesNotHaveDuplicates();
  }

  @Test
  void shouldNotClaimToBeADemonstrationInAHospital() {
    var frame =
        new Frame(
            new Setting(false, 1), Sample.NOW, Sample.ZONE, null, List.of(), "/wards", "", "1");
    assertThat(html("wards", Map.of("frame", frame, "wards", WardsScreen.of(List.of()))))
        .doesNotContain("invented");
  }

  @Test
  void shouldShowTheMostConcerningPatientFirstWithEverythingThatMattersNow() {
    String board = board();
    int start = board.indexOf("<li class=\"patient");
    String first = board.substring(start, board.indexOf("<li class=\"patient", start + 1));
    assertThat(first)
        .contains("Marlow")
        .contains("Priority 1, </span>High")
        .contains("<b>8</b>")
        .contains("unanswered for 4 min")
        .contains("next call in 11 min")
        .contains("set overdue by 5 min")
        .contains("Nobody yet")
        .contains("Acknowledge<span class=\"spoken\"> Marlow");
  }

  @Test
  void shouldNeverShowAPartialSetAsOneNumber() {
    assertThat(board()).contains("<b>5–9</b>").contains("incomplete, at least 5");
  }

  @Test
  void shouldOfferNothingToAManager() {
    var manager = new Reader("m.anager", Set.of(AccountRole.MANAGER));
    var screen = BoardScreen.of(Sample.board(), manager, Sample.ZONE);
    String html =
        html(
            "board",
            Map.of(
                "frame", Sample.frame("/wards/alder"), "board", screen, "telling", Sample.TELLING));
    assertThat(html).doesNotContain("action=\"/episodes/");
  }

  @Test
  void shouldExplainEveryPointOfTheScore() {
    assertThat(patient(null))
        .contains("<b>7–9</b>")
        .contains("To settle it, measure:")
        .contains("not measured, or too old to count")
        .contains("108 mmHg")
        .contains("101 to 110")
        .contains("RCP NEWS2 2017, chart 1");
  }

  @Test
  void shouldStrikeThroughWhatWasRetracted() {
    assertThat(patient(null)).contains("Retracted: wrong patient").contains("<s>");
  }

  @Test
  void shouldLeadFromTheRecordToItsCorrectionUnlessRetracted() {
    assertThat(patient(null))
        .contains("/encounters/V-104/assess?correct=" + first().id() + "\">Correct")
        .contains("/encounters/V-104/worry");
    var retracted =
        SamplePatient.history().assessments().stream()
            .filter(Assessment::retracted)
            .findFirst()
            .orElseThrow();
    assertThat(patient(null)).doesNotContain("correct=" + retracted.id() + "\"");
  }

  /** WCAG 2.2, 1.3.1 and 3.3.2: every field has a name; groups of choices are groups. */
  @Test
  void shouldNameEveryFieldOfTheEntryPage() {
    String page = assess(null);
    var fields = Pattern.compile("data-field=\"([^\"]+)\"").matcher(page).results().toList();
    var named =
        Pattern.compile(
                "<(?:fieldset|div) class=\"cell[^\"]*\" data-field=\"[^\"]+\"[^>]*>"
                    + "<(?:legend|label for=\"f-[^\"]+\")>")
            .matcher(page)
            .results()
            .count();
    assertThat(fields).hasSizeGreaterThan(500);
    assertThat(named).isEqualTo(fields.size());
  }

  @Test
  void shouldShowUnitPreviousValueAndExpectedRangeBesideANumber() {
    String page = assess(null);
    int start = page.indexOf("data-field=\"respiratory-rate\"");
    assertThat(page.substring(start, page.indexOf("data-field=\"oxygen-saturation\"", start)))
        .contains("inputmode=\"decimal\"")
        .contains("data-low=\"0\" data-high=\"100\"")
        .contains("expected 12 to 20")
        .contains("<span class=\"unit\">/min</span>")
        .contains("class=\"before\"");
  }

  @Test
  void shouldAskForAReasonToCorrectOrRetract() {
    String page = assess(first());
    assertThat(page)
        .contains("Why is it corrected?")
        .contains("Why is it retracted?")
        .contains("name=\"revision\" value=\"" + (first().revision() + 1) + "\"");
    assertThat(assess(null)).doesNotContain("Why is it");
  }

  @Test
  void shouldForeseeInWords() {
    assertThat(preview())
        .contains("<b>7–9</b>")
        .contains("incomplete, at least 7")
        .contains("To settle it, measure: <b>Temperature</b>")
        .contains("before 2")
        .contains("Mean arterial pressure 76.7 mmHg")
        .contains("next set due in");
    var refused =
        PreviewScreen.refused(List.of(new Fault("/findings/0/value", "out-of-range", "400 > 350")));
    assertThat(Rendering.html("preview", Map.of("now", Sample.NOW, "preview", refused)))
        .contains("Would be refused")
        .contains("400 &gt; 350");
  }

  @Test
  void shouldTellInPlaceThatSomebodyWasFaster() {
    assertThat(patient(new Outcome(false, "Nothing was changed: too late")))
        .contains("said refused\">Nothing was changed: too late");
  }

  @Test
  void shouldWriteWhatPeopleTypedAsText() {
    assertThat(patient(new Outcome(true, "<script>alert(1)</script>")))
        .doesNotContain("<script>alert");
  }

  @Test
  void shouldSayThatSigningInWasRefusedOnlyWhenItWas() {
    assertThat(signIn(true)).contains("role=\"alert\" id=\"refused\"");
    assertThat(signIn(false)).doesNotContain("id=\"refused\"");
  }

  @Test
  void shouldSayHowEachAlarmReachedWhom() {
    assertThat(patient(null))
        .contains("<b>delivered</b> Team pager, webhook")
        .contains("<b>not delivered, given up</b> Charge phone, mail")
        .contains("the mail server refused it, 550");
  }

  @Test
  void shouldShowInTheQueueWhoHasNotBeenTold() {
    assertThat(queue()).contains("<b>not delivered, given up</b> Charge phone, mail");
  }

  @Test
  void shouldSayOnTheBoardThatAChannelIsOff() {
    assertThat(board()).contains("The policy tells people by mail, which is not configured.");
  }

  @Test
  void shouldWarnThatWhatLooksQuietIsNot() {
    var warned =
        "role=\"alert\" sse-swap=\"warnings\"><p class=\"warning\"><strong>Nobody listens.</strong>"
            + " Look yourself.</p>";
    assertThat(patient(null)).contains(warned);
    assertThat(board()).contains(warned);
    assertThat(queue()).contains(warned);
  }

  @Test
  void shouldTellThePageWhatToSound() {
    assertThat(board()).contains("<i data-notice=\"7\" data-level=\"high\"></i>");
  }

  private static String board() {
    var screen = BoardScreen.of(Sample.board(), Sample.CHARGE, Sample.ZONE);
    return html(
        "board",
        Map.of("frame", Sample.frame("/wards/alder"), "board", screen, "telling", Sample.TELLING));
  }

  private static String queue() {
    var cards = Sample.board().cards().stream().filter(card -> card.episode() != null).toList();
    var screen = QueueScreen.of(cards, Sample.CHARGE, Sample.NOW, Sample.ZONE);
    return html(
        "queue",
        Map.of("frame", Sample.frame("/response"), "queue", screen, "telling", Sample.TELLING));
  }

  private static String wards() {
    var screen = WardsScreen.of(List.of(new WardLine("alder", 20, 2), new WardLine("birch", 1, 0)));
    return html("wards", Map.of("frame", Sample.frame("/wards"), "wards", screen));
  }

  @Test
  void shouldLeadFromTheFractionBesideEveryFigureToWhatItRestsOn() {
    assertThat(audit())
        .contains("<b>50 %</b> <a href=\"/audit/measures/M14?month=2026-01#figure-0\">1/2<")
        .contains("<td>events of the kind arrest</td>");
  }

  @Test
  void shouldLeadFromAFigureToItsEpisodesStaysAndEvents() {
    assertThat(measure())
        .contains("<td>yes</td><th scope=\"row\"><a href=\"/episodes/E-V-104-1\">E-V-104-1</a>")
        .contains("<a href=\"/encounters/V-105\">V-105</a></th><td>alder, bed 4</td>")
        .contains("<a href=\"/encounters/V-105/events#CE-1\">CE-1</a>")
        .contains("<th scope=\"row\">X-1</th>")
        .contains("href=\"/api/audit/measures.json?from=2026-01-01T00:00:00Z");
  }

  private static String audit() {
    return html("audit", Map.of("frame", Sample.frame("/audit"), "audit", SampleMeasures.screen()));
  }

  private static String measure() {
    return html(
        "measure", Map.of("frame", Sample.frame("/audit"), "measure", SampleMeasures.measure()));
  }

  private static String trial() {
    return html("trial", Map.of("frame", Sample.frame("/audit"), "trial", SampleMeasures.trial()));
  }

  private static String signIn(boolean refused) {
    return html("signIn", Map.of("frame", Sample.stranger(), "refused", refused));
  }

  private static String patient(@Nullable Outcome outcome) {
    var data = new HashMap<String, Object>();
    data.put("frame", Sample.frame("/encounters/V-104"));
    data.put(
        "patient",
        PatientScreen.of(
            SamplePatient.view(),
            Sample.TOLD,
            Sample.FINDINGS,
            Sample.POPULATIONS,
            Sample.CHARGE,
            Sample.ZONE));
    data.put(
        "history",
        HistoryTable.of(SamplePatient.history(), Sample.FINDINGS, Sample.NOW, Sample.ZONE, true));
    data.put("warnings", Sample.WARNINGS);
    data.put("hours", 24);
    data.put("outcome", outcome);
    return html("patient", data);
  }

  private static Assessment first() {
    return SamplePatient.history().assessments().stream()
        .filter(one -> !one.retracted())
        .findFirst()
        .orElseThrow();
  }

  private static String assess(@Nullable Assessment correct) {
    var record = new StayRecord(SamplePatient.view(), SamplePatient.history());
    var screen =
        EntryScreen.of(
            record, Catalogue.shipped(), "A-new", correct, null, name -> name, Sample.ZONE);
    return html(
        "assess", Map.of("frame", Sample.frame("/encounters/V-104/assess"), "entry", screen));
  }

  private static String preview() {
    var draft = Objects.requireNonNull(SamplePatient.view().snapshot());
    var derived =
        Derivations.standard()
            .from(
                List.of(
                    Finding.quantity("systolic-pressure", "110", "mm[Hg]"),
                    Finding.quantity("diastolic-pressure", "60", "mm[Hg]")));
    var before = Sample.snapshot("V-104", Sample.score(2, 2, null, List.of(), List.of()), 20);
    var screen =
        PreviewScreen.of(
            new Outlook(draft, draft, before),
            derived,
            true,
            score -> "Routine observations.",
            Sample.FINDINGS,
            Sample.NOW,
            Sample.ZONE);
    return Rendering.html("preview", Map.of("now", Sample.NOW, "preview", screen));
  }

  private static String html(String template, Map<String, Object> data) {
    String html = Rendering.html(template, data);
    try {
      Path pages = Files.createDirectories(Path.of("target", "pages"));
      Files.writeString(pages.resolve(template + ".html"), html);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return html;
  }
}
