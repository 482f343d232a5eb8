package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A policy that tells people by mail, where nobody has configured mail. */
class ChannelsIT {

  private static final String OFF = "The policy tells people by mail, which is not configured";

  @TempDir Path folder;

  @Test
  void shouldNameTheChannelThatIsOff() throws IOException {
    var shipped =
        Files.readString(Path.of("..", "alerts", "src/main/resources/policy/escalation.yaml"));
    var policy =
        Files.writeString(
            folder.resolve("policy.yaml"), shipped.replace("[board, tone]", "[board, tone, mail]"));

    try (var app =
        RunningApp.start(
            folder.resolve("data"), Map.of("DRIFTWARD_ALERTS_POLICY", policy.toString()))) {
      var well = app.asNobody().get("/q/health/well");

      assertThat(well.status()).isEqualTo(200);
      assertThat(well.json().at("/checks").findValue("off").asText()).isEqualTo(OFF);
      assertThat(app.written()).contains(OFF + ": nobody is told by it.");
    }
  }
}
