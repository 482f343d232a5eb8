package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.driftward.deploy.whole.Caller.Answer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What an operator sees when Kafka or the database goes away, and that it mends itself. */
class OutageIT {

  private static final Duration PATIENCE = Duration.ofMinutes(2);

  private static final ExecutorService SENDERS = Executors.newFixedThreadPool(60);

  @TempDir Path folder;

  @AfterAll
  static void sendNoMore() {
    SENDERS.shutdown();
  }

  @Test
  void shouldTurnRedWithWhatItStandsOnAndMendItself() {
    try (var outside = new Outside(folder);
        var app = RunningApp.start(folder.resolve("data"), outside.environment())) {
      var ward = Ward.open(app, "alder");
      ward.admit("V-1", "1", "Tolliver, Maud");

      var upload = HalfSentFile.begin(app, "V-1");
      outside.takeBrokerAway();
      expect(app, 503, "kafka");
      expectEveryWayInToAskForPatience(app, ward, upload);
      outside.bringBrokerBack();
      expect(app, 200, "kafka");
      upload.finish(PATIENCE);

      outside.takeDatabaseAway();
      expect(app, 503, "Database connections health check");
      outside.bringDatabaseBack();
      expect(app, 200, "Database connections health check");

      ward.send(Sets.veryIll("heard", "V-1", Instant.now()));
      ward.awaitCard(
          "V-1",
          PATIENCE,
          card -> {
            assertThat(card.at("/score/low").asInt()).isEqualTo(13);
            assertThat(card.at("/episode/state").asText()).isEqualTo("open");
          });
      assertThat(app.asNobody().get("/q/health/live").status()).isEqualTo(200);
    }
  }

  /** Each says when to come again, also to more senders at once than there are threads. */
  private static void expectEveryWayInToAskForPatience(
      RunningApp app, Ward ward, HalfSentFile upload) {
    var set = Sets.veryIll("unheard", "V-1", Instant.now());
    var answers =
        IntStream.range(0, 120)
            .mapToObj(i -> CompletableFuture.supplyAsync(() -> ward.send(set), SENDERS))
            .toList();
    assertThat(answers.stream().map(CompletableFuture::join)).allSatisfy(OutageIT::asksForPatience);
    asksForPatience(ward.admit("V-2", "2", "Tolliver, Agnes"));
    asksForPatience(app.asAdmin().post("/fhir", FhirIT.bundle("V-3", 38)));
    asksForPatience(HalfSentFile.send(app, "V-1"));
    asksForPatience(upload.sendRest());
  }

  private static void asksForPatience(Answer answer) {
    assertThat(answer.status()).as(answer.body()).isEqualTo(503);
    assertThat(answer.header("Retry-After")).isPresent();
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
