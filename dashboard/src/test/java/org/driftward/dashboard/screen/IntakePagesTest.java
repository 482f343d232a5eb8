package org.driftward.dashboard.screen;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.driftward.dashboard.contract.Setting;
import org.driftward.dashboard.screen.codes.CodeScreen;
import org.driftward.dashboard.screen.codes.CodesScreen;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CodeDesk.Decision;
import org.driftward.ingest.contract.CodeDesk.Mapped;
import org.driftward.ingest.contract.CodeDesk.Meant;
import org.driftward.ingest.contract.CodeDesk.Opened;
import org.driftward.ingest.contract.CodeDesk.Seen;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.IntakeDesk.Feed;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.driftward.ingest.contract.IntakeDesk.Line;
import org.driftward.ingest.contract.IntakeDesk.Refusal;
import org.driftward.ingest.contract.IntakeDesk.RefusalPage;
import org.driftward.ingest.contract.IntakeDesk.Replay;
import org.driftward.ingest.contract.IntakeDesk.State;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The pages of intake as they reach a browser. */
class IntakePagesTest {

  private static final Instant NOW = Instant.parse("2026-01-05T12:00:00Z");
  private static final Fault FAULT = new Fault("/findings/0/unit", "wrong-unit", "not <this> unit");
  private static final Line LINE =
      new Line(
          "R-1",
          Source.HL7,
          "mllp/lab",
          "MLLP",
          NOW.minusSeconds(90),
          "x-application/hl7-v2+er7",
          14,
          List.of(FAULT),
          State.REFUSED);

  private static final Seen SEEN =
      new Seen(
          "C-1",
          new ForeignCode("hl7:GATEWAY|NORTH", "L", "HF"),
          "Herzfrequenz <1>",
          List.of("Schlaege"),
          14,
          NOW.minusSeconds(600),
          NOW,
          "R-1");
  private static final Meant MEANT =
      new Meant(true, "heart-rate", null, null, null, Map.of(), Map.of("Schlaege", "/min"));

  @Test
  void shouldSayOfEachFeedHowItGoes() {
    var html = intake(Filter.OPEN);

    assertThat(html)
        .contains("mllp/lab", "HL7 v2", "2.4 a minute", "7 assessments, 1 bed move")
        .contains("3 refused", "silent for 2 h");
  }

  @Test
  void shouldSayHowFarAFileIs() {
    assertThat(intake(Filter.OPEN))
        .contains("night.csv", "value=\"50\"", "10 rows read, 8 accepted, 2 refused");
  }

  @Test
  void shouldKeepTheFilterOnTheWayToOlderRefusals() {
    var filter = new Filter(Source.HL7, "wrong-unit", null, null, true, null);

    assertThat(intake(filter))
        .contains("/intake?source=hl7&amp;rule=wrong-unit&amp;after=R-1#refused")
        .contains("<option value=\"hl7\" selected>");
  }

  @Test
  void shouldShowTheReasonBesideTheBytesAndEscapeBoth() {
    var refusal =
        new Refusal(
            LINE,
            Bytes.of("MSH|<b>\rPID|1\r".getBytes(UTF_8)),
            List.of(new Replay(NOW, "engineer", null, State.REFUSED, NOW, List.of(FAULT))));

    var html =
        Rendering.html("refusal", Map.of("frame", frame(), "refusal", RefusalScreen.of(refusal)));

    assertThat(html)
        .contains("not &lt;this&gt; unit", "MSH|&lt;b&gt;", "refused again")
        .contains("4d 53 48 7c")
        .contains("engineer replayed the original")
        .doesNotContain("<b>\r");
  }

  @Test
  void shouldListTheCodesThatNobodyHasMapped() {
    assertThat(intake(Filter.OPEN))
        .contains("/intake/codes/C-1", "Herzfrequenz &lt;1&gt;", "14 messages", "Schlaege")
        .contains("Mapped here: 1", "Heart rate, for every feed");
  }

  @Test
  void shouldAskOnlyWhatTheChosenFindingNeeds() {
    var unsaid = new Opened(SEEN, 14, List.of());

    assertThat(code(unsaid, null)).contains("Nobody has said").doesNotContain("name=\"unit\"");
    assertThat(code(unsaid, "heart-rate"))
        .contains("such as /min", "name=\"unit\"", "<code>Schlaege</code> means")
        .contains("It means Heart rate", "Replay the 14 held messages")
        .doesNotContain("name=\"site\"", "name=\"answers\"");
    assertThat(code(unsaid, "pulse-amplitude"))
        .contains("<option value=\"dorsalis-pedis\">", "<option value=\"left\">")
        .doesNotContain("name=\"unit\"");
    assertThat(code(unsaid, "consciousness"))
        .contains("name=\"option\" value=\"unresponsive\"")
        .doesNotContain("name=\"unit\"", "name=\"side\"");
  }

  @Test
  void shouldShowWhatACodeMeansAndWhoSaidSo() {
    var said = List.of(new Decision(NOW, "engineer", MEANT), new Decision(NOW, "second", null));

    assertThat(code(new Opened(SEEN, 0, said), null))
        .contains("It means <b>Heart rate, for every feed</b>", "Take back what it means")
        .contains("value=\"every\" checked", "name=\"ucum\" value=\"/min\"")
        .contains("engineer said it means Heart rate, for every feed", "second took it back")
        .doesNotContain("Replay the");
  }

  private static String intake(Filter filter) {
    var feed =
        new Feed(
            Source.HL7,
            "mllp/lab",
            NOW.minus(Duration.ofHours(2)),
            7,
            1,
            3,
            12,
            Duration.ofSeconds(90),
            Duration.ofMillis(400));
    var file =
        new FileImport(
            "F-1",
            "night.csv",
            "feeds",
            NOW,
            FileImport.State.RUNNING,
            1000L,
            800,
            false,
            500,
            10,
            8,
            2,
            List.of());
    var page = new RefusalPage(List.of(LINE), "R-1", List.of("wrong-unit"));
    var screen = IntakeScreen.of(List.of(feed), List.of(file), page, filter, NOW, ZoneOffset.UTC);
    var codes =
        CodesScreen.of(
            List.of(SEEN),
            List.of(new Mapped(SEEN, new Decision(NOW, "engineer", MEANT))),
            new Findings(Catalogue.shipped()));
    return Rendering.html("intake", Map.of("frame", frame(), "intake", screen, "codes", codes));
  }

  private static String code(Opened opened, @Nullable String chosen) {
    var screen = CodeScreen.of(opened, chosen, Catalogue.shipped(), true);
    return Rendering.html("code", Map.of("frame", frame(), "code", screen));
  }

  private static Frame frame() {
    return new Frame(
        new Setting(false, 1),
        NOW,
        ZoneOffset.UTC,
        "Integration",
        List.of(),
        "/intake",
        "token",
        "v1");
  }
}
