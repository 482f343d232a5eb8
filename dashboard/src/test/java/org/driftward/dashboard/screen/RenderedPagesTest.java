package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The pages as they reach a browser. Each is also left in {@code target/pages} to be looked at. */
class RenderedPagesTest {

  @Test
  void shouldPutWhatTheScreenHoldsOnTheBoard() {
    var screen = BoardScreen.of(Sample.board(), Sample.CHARGE, Sample.ZONE);

    String html = page("board", Map.of("frame", Sample.frame("/wards/alder"), "board", screen));

    assertThat(html).contains("Marlow", "unanswered for 4 min");
  }

  @Test
  void shouldShowThePatient() throws IOException {
    String html = patient("patient", null);
    assertThat(html).contains("Marlow");
    var data =
        ChartData.of(
            SamplePatient.history(),
            Sample.FINDINGS,
            Sample.NOW.minus(Duration.ofHours(24)),
            Sample.NOW,
            0);
    Files.writeString(
        Files.createDirectories(Path.of("target/pages/encounters/V-104")).resolve("course.json"),
        new ObjectMapper().writeValueAsString(data));
  }

  @Test
  void shouldShowTheQueue() {
    var cards = Sample.board().cards().stream().filter(card -> card.episode() != null).toList();
    var screen = QueueScreen.of(cards, Sample.CHARGE, Sample.NOW, Sample.ZONE);
    String html = page("queue", Map.of("frame", Sample.frame("/response"), "queue", screen));
    assertThat(html).contains("Marlow");
  }

  @Test
  void shouldAskWhoItIs() {
    String html = page("signIn", Map.of("frame", Sample.stranger(), "refused", true));
    assertThat(html).contains("j_username");
  }

  private static String patient(String file, @Nullable Outcome outcome) {
    var data = new HashMap<String, Object>();
    data.put("frame", Sample.frame("/encounters/V-104"));
    data.put(
        "patient",
        PatientScreen.of(SamplePatient.view(), Sample.FINDINGS, Sample.CHARGE, Sample.ZONE));
    data.put(
        "history",
        HistoryTable.of(SamplePatient.history(), Sample.FINDINGS, Sample.NOW, Sample.ZONE));
    data.put("hours", 24);
    data.put("outcome", outcome);
    return page(file, data);
  }

  private static String page(String template, Map<String, Object> data) {
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
