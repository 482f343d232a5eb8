package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** From the bedside to the board: intake, Kafka, scoring, episode, read model, answer. */
@WithRunningApp
class WholeWayIT {

  private static final Duration PATIENCE = Duration.ofSeconds(90);

  private final RunningApp app;
  private final Ward ward;

  WholeWayIT(RunningApp app) {
    this.app = app;
    this.ward = Ward.open(app, "alder");
  }

  @Test
  void shouldBringASetToTheBoardAndLetTheNurseAnswer() {
    assertThat(ward.admit("V-1001", "4", "Quillfeather, Odalys").status()).isEqualTo(200);

    var accepted = ward.send(Sets.veryIll("A-1001", "V-1001", Instant.now().minusSeconds(30)));

    assertThat(accepted.status()).as(accepted.body()).isEqualTo(202);
    ward.awaitCard(
        "V-1001",
        PATIENCE,
        card -> {
          assertThat(card.at("/score/id").asText()).isEqualTo("news2");
          assertThat(card.at("/score/low").asInt()).isEqualTo(13);
          assertThat(card.at("/score/high").asInt()).isEqualTo(13);
          assertThat(card.at("/level").asText()).isEqualTo("high");
          assertThat(card.at("/episode/state").asText()).isEqualTo("open");
        });

    var episode = ward.card("V-1001").orElseThrow().at("/episode/id").asText();
    var answer = ward.nurse().post("/api/episodes/" + episode + "/acknowledge", "{}");

    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    ward.awaitCard(
        "V-1001",
        PATIENCE,
        card -> {
          assertThat(card.at("/episode/state").asText()).isEqualTo("acknowledged");
          assertThat(card.at("/episode/owner").asText()).isEqualTo("charge.alder");
        });

    var check = app.asAdmin().get("/api/journal/check").json();
    assertThat(check.at("/sound").asBoolean()).isTrue();
    assertThat(check.at("/entries").asLong()).isGreaterThanOrEqualTo(2);
  }

  @Test
  void shouldPutTheMostConcerningFirst() {
    ward.admit("V-1002", "5", "Larkspur, Benedek");
    ward.admit("V-1003", "6", "Moorcroft, Ines");
    ward.send(Sets.well("A-1002", "V-1002", Instant.now().minusSeconds(30)));
    ward.send(Sets.veryIll("A-1003", "V-1003", Instant.now().minusSeconds(30)));

    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () -> {
              assertThat(ward.card("V-1002").orElseThrow().at("/score/low").asInt()).isZero();
              assertThat(ward.board().at("/patients/0/score/low").asInt()).isEqualTo(13);
            });
  }
}
