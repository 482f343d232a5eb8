package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The pages as they reach a browser. Each is also left in {@code target/pages} to be looked at. */
class RenderedPagesTest {

  @Test
  void shouldPutWhatTheScreenHoldsOnTheBoard() throws IOException {
    var html =
        page("board", Map.of("frame", Sample.frame("/wards/alder"), "board", Sample.board()));
    assertThat(html).contains("Marlow", "unanswered for 4 min");
  }

  private static String page(String template, Map<String, Object> data) throws IOException {
    String html = Rendering.html(template, data);
    Path pages = Files.createDirectories(Path.of("target", "pages"));
    Files.writeString(pages.resolve(template + ".html"), html);
    return html;
  }
}
