package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.Test;

/**
 * A hospital's HL7 v2 feed to the board, over a real socket. Segments by HL7 v2.5.1 chapters 3 and
 * 7; the points follow from the table of the Royal College of Physicians (2017).
 */
@WithRunningApp
class MllpIT {

  private static final Duration PATIENCE = Duration.ofSeconds(90);
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyyMMddHHmmssZ").withZone(ZoneOffset.UTC);

  private final RunningApp app;
  private final Ward linden;
  private final Ward alder;

  MllpIT(RunningApp app) {
    this.app = app;
    this.linden = Ward.open(app, "linden-west");
    this.alder = Ward.open(app, "alder");
  }

  @Test
  void shouldFollowAPatientFromAdmissionToDischarge() {
    var now = Instant.now();

    assertThat(send(adt("A01", "linden-west^^7", now.minusSeconds(3600)))).contains("MSA|AA|");
    assertThat(send(results(now.minusSeconds(60)))).contains("MSA|AA|");
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () ->
                assertThat(linden.card("V-4001"))
                    .hasValueSatisfying(
                        card -> {
                          // 2 for 39.2 Cel, 2 for 22 /min.
                          assertThat(card.at("/score/low").asInt()).isEqualTo(4);
                          assertThat(card.at("/bed").asText()).isEqualTo("7");
                        }));

    assertThat(send(adt("A02", "alder^^3", now.minusSeconds(30)))).contains("MSA|AA|");
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () -> {
              assertThat(linden.card("V-4001")).isEmpty();
              assertThat(alder.card("V-4001")).isPresent();
            });

    assertThat(send(adt("A03", "alder^^3", now.minusSeconds(10)))).contains("MSA|AA|");
    await().atMost(PATIENCE).untilAsserted(() -> assertThat(alder.card("V-4001")).isEmpty());
  }

  private String send(String message) {
    try (var sender = new MllpSender(app.mllpPort())) {
      return sender.exchange(message);
    }
  }

  private static String adt(String event, String place, Instant at) {
    return String.join(
        "\r",
        msh("ADT^" + event, event + at.getEpochSecond()),
        "EVN||" + TIME.format(at),
        pid(),
        pv1(place));
  }

  private static String results(Instant at) {
    return String.join(
        "\r",
        msh("ORU^R01", "R" + at.getEpochSecond()),
        pid(),
        pv1("linden-west^^7"),
        "OBR|1||F-1^GATEWAY|SET^Vital signs^L|||" + TIME.format(at),
        "OBX|1|NM|8310-5^Temperature^LN||102.56|degF|||||F",
        "OBX|2|NM|9279-1^Respiratory rate^LN||22|/min|||||F",
        "OBX|3|NM|8867-4^Heart rate^LN||80|bpm|||||F");
  }

  private static String msh(String event, String id) {
    return "MSH|^~\\&|GATEWAY|WEST|DRIFTWARD|HOUSE|"
        + (TIME.format(Instant.now()) + "||" + event + "|" + id + "|P|2.5.1");
  }

  private static String pid() {
    return "PID|1||P-4001^^^HOUSE^MR||Harrowgate^Sunniva||19480920|F";
  }

  private static String pv1(String place) {
    return "PV1|1|I|" + place + "|".repeat(16) + "V-4001";
  }
}
