package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an orchestrator and an operator are told. */
class HealthIT {

  @TempDir Path folder;

  @Test
  void shouldTurnRedWhenTheDatabaseDies() {
    try (var app = RunningApp.start(folder.resolve("data"))) {
      assertThat(app.asNobody().get("/q/health/ready").status()).isEqualTo(200);

      app.killDatabase();

      await()
          .atMost(Duration.ofSeconds(60))
          .untilAsserted(
              () -> {
                var health = app.asNobody().get("/q/health/ready");
                assertThat(health.status()).isEqualTo(503);
                assertThat(health.json().at("/status").asText()).isEqualTo("DOWN");
              });
    }
  }

  @Test
  void shouldMeasureEveryStage() {
    try (var app = RunningApp.start(folder.resolve("data"))) {
      var metrics = app.asAdmin().get("/q/metrics").body();

      assertThat(metrics)
          .contains(
              "driftward_assessments_accepted_total",
              "driftward_assessments_refused_total",
              "driftward_assessments_scored_total",
              "driftward_snapshots_sent_total",
              "driftward_scoring_lag",
              "driftward_episodes{",
              "driftward_ladder_fired_total",
              "driftward_board_latency_seconds_count{from=\"taken\"",
              "driftward_board_latency_seconds_count{from=\"accepted\"");
    }
  }
}
