package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/**
 * A hospital's HL7 v2 feed to the board, over a real socket. Segments by HL7 v2.5.1 chapters 3 and
 * 7; the points follow from the table of the Royal College of Physicians (2017).
 */
@WithRunningApp
class MllpIT {

  private static final Duration PATIENCE = Duration.ofSeconds(90);

  private final Gateway gateway;
  private final Ward linden;
  private final Ward alder;

  MllpIT(RunningApp app) {
    this.gateway = new Gateway(app);
    this.linden = Ward.open(app, "linden-west");
    this.alder = Ward.open(app, "alder");
  }

  @Test
  void shouldFollowAPatientFromAdmissionToDischarge() {
    var now = Instant.now();

    assertThat(adt("A01", "linden-west^^7", now.minusSeconds(3600))).contains("MSA|AA|");
    assertThat(results(now.minusSeconds(60))).contains("MSA|AA|");
    linden.awaitCard(
        "V-4001",
        PATIENCE,
        card -> {
          // 2 for 39.2 Cel, 2 for 22 /min.
          assertThat(card.at("/score/low").asInt()).isEqualTo(4);
          assertThat(card.at("/bed").asText()).isEqualTo("7");
        });

    assertThat(adt("A02", "alder^^3", now.minusSeconds(30))).contains("MSA|AA|");
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () -> {
              assertThat(linden.card("V-4001")).isEmpty();
              assertThat(alder.card("V-4001")).isPresent();
            });

    assertThat(adt("A03", "alder^^3", now.minusSeconds(10))).contains("MSA|AA|");
    await().atMost(PATIENCE).untilAsserted(() -> assertThat(alder.card("V-4001")).isEmpty());
  }

  private String adt(String event, String place, Instant at) {
    return gateway.send(
        "ADT^" + event, "EVN||" + Gateway.time(at), patient(), Gateway.visit(place, "V-4001"));
  }

  private String results(Instant at) {
    return gateway.send(
        "ORU^R01",
        patient(),
        Gateway.visit("linden-west^^7", "V-4001"),
        "OBR|1||F-1^GATEWAY|SET^Vital signs^L|||" + Gateway.time(at),
        "OBX|1|NM|8310-5^Temperature^LN||102.56|degF|||||F",
        "OBX|2|NM|9279-1^Respiratory rate^LN||22|/min|||||F",
        "OBX|3|NM|8867-4^Heart rate^LN||80|bpm|||||F");
  }

  private static String patient() {
    return Gateway.patient("P-4001", "Harrowgate^Sunniva||19480920|F");
  }
}
