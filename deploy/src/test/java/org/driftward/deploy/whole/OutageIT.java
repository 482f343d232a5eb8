package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an operator sees when Kafka or the database goes away, and that it mends itself. */
class OutageIT {

  private static final Duration PATIENCE = Duration.ofMinutes(2);

  @TempDir Path folder;

  @Test
  void shouldTurnRedWithWhatItStandsOnAndMendItself() {
    try (var outside = new Outside(folder);
        var app = RunningApp.start(folder.resolve("data"), outside.environment())) {
      var ward = Ward.open(app, "alder");
      ward.admit("V-1", "1", "Tolliver, Maud");

      outside.takeBrokerAway();
      expect(app, 503, "kafka");
      assertThat(ward.send(Sets.veryIll("unheard", "V-1", Instant.now())).status()).isEqualTo(503);
      outside.bringBrokerBack();
      expect(app, 200, "kafka");

      outside.takeDatabaseAway();
      expect(app, 503, "Database connections health check");
      outside.bringDatabaseBack();
      expect(app, 200, "Database connections health check");

      ward.send(Sets.veryIll("heard", "V-1", Instant.now()));
      await()
          .atMost(PATIENCE)
          .untilAsserted(
              () ->
                  assertThat(ward.card("V-1"))
                      .hasValueSatisfying(
                          card -> {
                            assertThat(card.at("/score/low").asInt()).isEqualTo(13);
                            assertThat(card.at("/episode/state").asText()).isEqualTo("open");
                          }));
      assertThat(app.asNobody().get("/q/health/live").status()).isEqualTo(200);
    }
  }

  private static void expect(RunningApp app, int status, String check) {
    var colour = status == 200 ? "UP" : "DOWN";
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () -> {
              var health = app.asNobody().get("/q/health/ready");
              assertThat(health.status()).as(health.body()).isEqualTo(status);
              assertThat(health.json().get("checks"))
                  .anySatisfy(
                      it -> {
                        assertThat(it.get("name").asText()).isEqualTo(check);
                        assertThat(it.get("status").asText()).isEqualTo(colour);
                      });
            });
  }
}
