package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A score that cannot be trusted keeps the application from starting, and its line is named. */
class BrokenDefinitionIT {

  /** Nothing holds between 38 and 39. No published score. */
  private static final String GAP =
      """
      id: fever
      title: Fever
      version: "1"
      rank: 500
      source: "the ward's own, no source"
      applies-to: {}
      inputs: [{code: temperature, unit: Cel, digits: 1}]
      rows:
        - input: temperature
          row: Fever
          bands:
            - {below: 38, points: 0}
            - {from: 39, points: 1}
      risks: [{id: any, response: local policy}]
      """;

  @TempDir Path folder;

  @Test
  void shouldNotStartOnADefinitionWithAGapAndNameTheLine() throws IOException {
    var file = Files.writeString(folder.resolve("gap.yaml"), GAP);
    var environment = Map.of("DRIFTWARD_SCORING_SCORES", file.toString());

    assertThatThrownBy(() -> RunningApp.start(folder.resolve("data"), environment).close())
        .isInstanceOf(AssertionError.class);

    assertThat(terminal()).contains("gap.yaml:13: band 39 or more leaves a gap after below 38");
  }

  private String terminal() throws IOException {
    try (var files = Files.newDirectoryStream(folder, "terminal-*.log")) {
      return Files.readString(files.iterator().next());
    }
  }
}
