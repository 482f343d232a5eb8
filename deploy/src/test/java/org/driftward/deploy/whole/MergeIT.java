package org.driftward.deploy.whole;

import static java.util.stream.StreamSupport.stream;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/**
 * One person under two numbers: HL7 v2 ADT A40 (chapter 3) makes one stay of two, which then moves.
 * The points follow from the table of the Royal College of Physicians (2017).
 */
@WithRunningApp
class MergeIT {

  private static final Duration PATIENCE = Duration.ofSeconds(90);
  private static final String GIVEN_UP = "V-5001";
  private static final String SURVIVOR = "V-5002";

  private final Instant now = Instant.now().truncatedTo(ChronoUnit.SECONDS);
  private final Gateway gateway;
  private final Ward alder;
  private final Ward rowan;

  MergeIT(RunningApp app) {
    this.gateway = new Gateway(app);
    this.alder = Ward.open(app, "alder-merge");
    this.rowan = Ward.open(app, "rowan-merge");
  }

  @Test
  void shouldMakeOneStayOfTwoAndFollowItToAnotherWard() {
    alder.admit(GIVEN_UP, "4", "Unknown, Found at the Gate");
    rowan.admit(SURVIVOR, "7", "Marlowe-Finch, Ottoline");
    alder.send(Sets.well("A-51", GIVEN_UP, ago(90)));
    rowan.send(Sets.well("A-52", SURVIVOR, ago(60)));
    alder.send(Sets.veryIll("A-53", GIVEN_UP, ago(40)));
    rowan.send(withoutWordAndTemperature("A-54", SURVIVOR, ago(20)));
    eventually(() -> alder.card(GIVEN_UP).orElseThrow().at("/episode/state").asText(), "open");
    eventually(() -> total(rowan, SURVIVOR), "7 to 7");
    var episode = alder.card(GIVEN_UP).orElseThrow().at("/episode/id").asText();

    assertThat(merge()).contains("MSA|AA|");

    shouldCountForTheSurvivor(episode);
    shouldLeadToTheSurvivor();
    shouldTakeACorrectionUnderTheSurvivingNumber();

    assertThat(moveToAlder()).contains("MSA|AA|");
    eventually(() -> rowan.card(SURVIVOR).isPresent(), false);
    eventually(() -> running(alder), List.of(SURVIVOR));
    assertThat(alder.card(SURVIVOR).orElseThrow().at("/bed").asText()).isEqualTo("9");
  }

  /**
   * Before the merge the word and the temperature of A-54 were those of A-52: alert 0 and 36.8 Cel
   * 0, beside 26/min 3, 93 % 2, 105 mmHg 1 and 95/min 1. Now they are those of A-53: confused 3 and
   * 39.1 Cel 2.
   */
  private void shouldCountForTheSurvivor(String episode) {
    eventually(() -> total(rowan, SURVIVOR), "12 to 12");
    eventually(() -> alder.card(GIVEN_UP).isPresent(), false);
    var patient = patient(rowan, SURVIVOR);
    assertThat(input(patient, "consciousness").at("/takenAt").asText())
        .isEqualTo(ago(40).toString());
    assertThat(input(patient, "temperature").at("/points").asInt()).isEqualTo(2);

    var history = rowan.history(SURVIVOR);
    assertThat(ids(history)).containsExactly("A-54", "A-53", "A-52", "A-51");
    assertThat(totals(history)).containsExactly("A-54 12", "A-53 13", "A-52 0", "A-51 0");
    assertThat(alder.history(GIVEN_UP).at("/snapshots")).isEmpty();

    eventually(() -> rowan.card(SURVIVOR).orElseThrow().at("/episode/level").asText(), "high");
    assertThat(running(rowan)).containsExactly(SURVIVOR);
    assertThat(running(alder)).isEmpty();
    assertThat(alder.nurse().get("/api/episodes/" + episode).body())
        .contains("\"closedBecause\":\"merged into " + SURVIVOR);
  }

  private void shouldLeadToTheSurvivor() {
    var answer = alder.nurse().get("/api/encounters/" + GIVEN_UP);
    assertThat(answer.status()).isEqualTo(307);
    assertThat(answer.header("Location"))
        .hasValueSatisfying(at -> assertThat(at).endsWith("/api/encounters/" + SURVIVOR));
    assertThat(rowan.nurse().get("/api/encounters/" + GIVEN_UP).status()).isEqualTo(403);
    var late = alder.send(Sets.well("A-55", GIVEN_UP, ago(5)));
    assertThat(late.status()).isEqualTo(400);
    assertThat(late.body()).contains("merged into " + SURVIVOR);
  }

  /** 24/min instead of 29 is 2 instead of 3. */
  private void shouldTakeACorrectionUnderTheSurvivingNumber() {
    var correction =
        Sets.veryIll("A-53", SURVIVOR, ago(40))
            .replace("\"revision\":1,", "\"revision\":2,\"reason\":\"typing error\",")
            .replace("\"final\"", "\"amended\"")
            .replace("\"value\":29", "\"value\":24");
    var accepted = rowan.send(correction);
    assertThat(accepted.status()).as(accepted.body()).isEqualTo(202);
    eventually(
        () -> totals(rowan.history(SURVIVOR)), List.of("A-54 12", "A-53 12", "A-52 0", "A-51 0"));
    assertThat(ids(rowan.history(SURVIVOR))).containsExactly("A-54", "A-53", "A-52", "A-51");
  }

  private String merge() {
    return gateway.send(
        "ADT^A40",
        "EVN||" + Gateway.time(now),
        Gateway.patient("P-" + SURVIVOR, "Marlowe-Finch^Ottoline||19510402|F"),
        "MRG|P-" + GIVEN_UP + "^^^HOUSE^MR||||" + GIVEN_UP,
        Gateway.visit("rowan-merge^^7", SURVIVOR));
  }

  private String moveToAlder() {
    return gateway.send(
        "ADT^A02",
        "EVN||" + Gateway.time(Instant.now()),
        Gateway.patient("P-" + SURVIVOR, "Marlowe-Finch^Ottoline||19510402|F"),
        Gateway.visit("alder-merge^^9", SURVIVOR));
  }

  private static String withoutWordAndTemperature(String id, String encounter, Instant takenAt) {
    return Sets.ill(id, encounter, takenAt)
        .replace("\"value\":118", "\"value\":95")
        .replaceFirst("(?s),\\s*\\{\"code\":\"consciousness\".*\\]\\}", "]}");
  }

  private Instant ago(long minutes) {
    return now.minus(minutes, ChronoUnit.MINUTES);
  }

  private static String total(Ward ward, String encounter) {
    return ward.card(encounter)
        .map(card -> card.at("/score/low").asText() + " to " + card.at("/score/high").asText())
        .orElse("no card");
  }

  private static JsonNode patient(Ward ward, String encounter) {
    var answer = ward.nurse().get("/api/encounters/" + encounter);
    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    return answer.json();
  }

  private static JsonNode input(JsonNode patient, String code) {
    return stream(patient.at("/snapshot/scores/0/inputs").spliterator(), false)
        .filter(input -> input.at("/code").asText().equals(code))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> ids(JsonNode history) {
    return stream(history.at("/assessments").spliterator(), false)
        .map(assessment -> assessment.at("/id").asText())
        .toList();
  }

  private static List<String> totals(JsonNode history) {
    return stream(history.at("/snapshots").spliterator(), false)
        .map(
            snapshot ->
                snapshot.at("/assessment").asText() + " " + snapshot.at("/scores/0/low").asText())
        .toList();
  }

  /** The encounters of the ward that somebody has to answer for. */
  private static List<String> running(Ward ward) {
    var answer = ward.nurse().get("/api/episodes?ward=" + ward.name() + "&state=open");
    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    return stream(answer.json().spliterator(), false)
        .map(episode -> episode.at("/encounter").asText())
        .toList();
  }

  private static <T> void eventually(Supplier<T> what, T becomes) {
    await().atMost(PATIENCE).untilAsserted(() -> assertThat(what.get()).isEqualTo(becomes));
  }
}
