package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.screen.Sample.NOW;
import static org.driftward.dashboard.screen.Sample.ZONE;
import static org.driftward.dashboard.screen.Sample.ago;
import static org.driftward.dashboard.screen.Sample.in;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Call.Caller;
import org.driftward.alerts.contract.Call.CallerRole;
import org.driftward.alerts.contract.Call.Moment;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.Call.Treatment;
import org.driftward.alerts.contract.Call.TreatmentKind;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.Handover;
import org.driftward.alerts.contract.HandoverText;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.WardHandover;
import org.driftward.dashboard.core.Feed;
import org.driftward.dashboard.core.WardPaper;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages of duties, calls and hand-overs as they reach a browser; left in target/pages. */
class PeoplePagesTest {

  static List<String> everyPage() {
    return List.of(staff(), call(), episode(), events(), handover(), sheet(), downtime());
  }

  @ParameterizedTest
  @MethodSource("everyPage")
  void shouldObeyItsOwnContentSecurityPolicyAndUseEveryIdOnce(String html) {
    assertThat(html)
        .doesNotContainPattern("<script(?![^>]*src=)")
        .doesNotContainPattern("\\son[a-z]+=")
        .doesNotContainPattern("\\sstyle=");
    var ids = Pattern.compile("\\sid=\"([^\"]+)\"").matcher(html).results().map(m -> m.group(1));
    assertThat(ids).doesNotHaveDuplicates();
  }

  @Test
  void shouldSayWhichBedsNobodyLooksAfter() {
    assertThat(staff())
        .contains("Ines Varga")
        .contains("Nobody looks after bed")
        .contains("I take over<span class=\"spoken\"> from Tomas Almeida")
        .doesNotContain("Nobody is in charge");
  }

  @Test
  void shouldShowBothTimesOfALateEntry() {
    assertThat(call()).contains("(entered 03:10)").contains("Oxygen: 4 L/min");
  }

  @Test
  void shouldSayWhoCalledTheTeam() {
    assertThat(call()).contains("Called by").contains("Family or visitor, her daughter");
  }

  @Test
  void shouldReadAnEpisodeBackWithItsTimesAndReasons() {
    assertThat(episode())
        .contains("<dt>First trigger</dt><dd>02:52</dd>")
        .contains("<dt>Answered</dt><dd>not so far</dd>")
        .contains("NEWS2 is 8: at or above 7")
        .contains("href=\"/encounters/V-104/events\"");
  }

  @Test
  void shouldListEventsNewestFirstWithTheirCircumstances() {
    assertThat(events())
        .containsSubsequence("Death", "expected; in the night", "Arrest")
        .contains("entered 03:10");
  }

  @Test
  void shouldOfferNoFormToSomebodyWhoDoesNotCareForPatients() {
    var manager = new Reader("o.boss", Set.of("manager"));
    assertThat(events(manager)).contains("Arrest").doesNotContain("Record the event");
  }

  /** The contents of a shift's list, practice.md section 4. */
  @Test
  void shouldListWhatAShiftHandsOver() {
    assertThat(sheet())
        .contains("Occupancy", "Staffing", "Concern and trend", "Unanswered", "overdue")
        .contains("Calls since", "Ceilings, altered limits", "Feeds")
        .contains("SILENT for 3 h")
        .contains("Not received yet");
  }

  private static String staff() {
    return html(
        "staff", "staff", StaffScreen.of(Sample.board(), onDuty(), Sample.CHARGE, ZONE, null));
  }

  private static String call() {
    var episode = Sample.open("V-104", Level.HIGH, 20, "NEWS2 is 8: at or above 7");
    var call =
        new Call(
            episode.id(),
            "V-104",
            "alder",
            "4",
            3,
            ago(20),
            List.of("NEWS2 is 8: at or above 7"),
            "ward-based care",
            1,
            new Caller(CallerRole.FAMILY, "her daughter"),
            List.of(
                new Moment(Step.RECEIVED, ago(16), ago(16), "r.lind"),
                new Moment(Step.AT_BEDSIDE, ago(12), ago(2), "r.lind")),
            List.of(),
            Set.of("registrar"),
            List.of(new Treatment(TreatmentKind.OXYGEN, "4 L/min", ago(9), ago(9), "r.lind")),
            "r.lind",
            "Yara Lind",
            List.of(),
            null);
    var screen =
        CallScreen.of(call, episode, who(), Sample.FINDINGS, Sample.CHARGE, NOW, ZONE, null);
    return html("call", "call", screen);
  }

  private static String episode() {
    var open = Sample.open("V-104", Level.HIGH, 20, "NEWS2 is 8: at or above 7");
    var change =
        new EpisodeChange(
            1, ago(20), "opened", "driftward", null, "NEWS2 is 8: at or above 7", open);
    return html(
        "episode",
        "episode",
        EpisodeScreen.of(who(), open, List.of(change), Sample.TOLD, Sample.CHARGE, NOW, ZONE));
  }

  private static String events() {
    return events(Sample.CHARGE);
  }

  private static String events(Reader reader) {
    var kept =
        List.of(
            event("CE-1", ClinicalEvent.Kind.ARREST, 20, false, null),
            event("CE-2", ClinicalEvent.Kind.DEATH, 5, true, "in the night"));
    return html("events", "events", EventsScreen.of(who(), kept, reader, NOW, ZONE, null));
  }

  private static ClinicalEvent event(
      String id, ClinicalEvent.Kind kind, int minutes, boolean expected, @Nullable String note) {
    return new ClinicalEvent(
        id, "V-104", "alder", kind, ago(minutes), ago(2), "r.lind", false, expected, note);
  }

  private static Identity who() {
    return Identity.of(SamplePatient.view().encounter(), NOW, ZONE);
  }

  private static String handover() {
    var text =
        new HandoverText(
            "I am Ines Varga (charge), ward alder.",
            "Concern of high priority, open since 02:52.\n- NEWS2 8 at 02:50 (7 or more)",
            "Admitted 3 Jan 01:12.",
            "",
            HandoverText.DRAFT + "somebody at the bedside within 30 min of the alarm.");
    var said = new HandoverText("i", "s", "b", "likely chest infection", "review within 15 min");
    var earlier =
        new Handover(
            "H-1", "V-104", null, ago(50), "ines.varga", "Ines Varga", "Dr Six", null, said, true);
    return html(
        "handover",
        "handover",
        HandoverScreen.of(who(), text, "", "", onDuty(), List.of(earlier), NOW, ZONE, null));
  }

  private static String sheet() {
    var earlier =
        new WardHandover(
            "WH-1", "alder", ago(10), "t.a", "Tomas Almeida", "Occupancy", null, null, null, null);
    return html(
        "sheet",
        "sheet",
        SheetScreen.of(paper(), List.of(earlier), Sample.FINDINGS, Sample.CHARGE, ZONE, null));
  }

  private static String downtime() {
    return html("downtime", "paper", DowntimeScreen.of(paper(), Sample.FINDINGS, ZONE));
  }

  private static WardPaper paper() {
    return new WardPaper(
        Sample.board(),
        List.of(SamplePatient.view()),
        List.of(SamplePatient.history()),
        onDuty(),
        ago(300),
        List.of(),
        List.of(new Feed("bedside", ago(4)), new Feed("hl7", ago(180))));
  }

  private static List<Shift> onDuty() {
    return List.of(
        shift("S-1", Duty.BEDSIDE, "t.almeida", "Tomas Almeida", Set.of("4", "5")),
        shift("S-2", Duty.CHARGE, "ines.varga", "Ines Varga", Set.of()));
  }

  private static Shift shift(String id, Duty duty, String account, String name, Set<String> beds) {
    return new Shift(id, "alder", duty, account, name, beds, ago(300), in(420), null, null);
  }

  private static String html(String template, String data, Object screen) {
    var html =
        Rendering.html(template, Map.of("frame", Sample.frame("/wards/alder"), data, screen));
    try {
      Path pages = Files.createDirectories(Path.of("target", "pages"));
      Files.writeString(pages.resolve(template + ".html"), html);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return html;
  }
}
