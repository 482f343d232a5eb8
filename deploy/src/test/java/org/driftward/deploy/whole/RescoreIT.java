package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/**
 * Another policy tried on the running application. The score tried is the ward's own, no source.
 */
@WithRunningApp
class RescoreIT {

  private static final Duration PATIENCE = Duration.ofSeconds(90);

  private static final String EDITION =
      """
      {"from":"%s","policy":"version: %s","scores":["id: pulse\\ntitle: Pulse\\nversion: '1'\\nrank: 200\
      \\nsource: the ward's own, no source\\napplies-to: {}\\ninputs: [{code: heart-rate, unit: /min,\
       digits: 0}]\\nrows: [{input: heart-rate, row: Pulse, bands: [{below: 60, points: 0}, {from: 60,\
       points: 1}]}]\\nrisks: [{id: any, response: local policy}]"]}
      """;

  private final RunningApp app;
  private final Ward ward;

  RescoreIT(RunningApp app) {
    this.app = app;
    this.ward = Ward.open(app, "rowan");
  }

  private static String edition(String version, Instant from) {
    return EDITION.formatted(from, version).replace("\n", "");
  }

  private String finished(String edition) {
    var begun = app.asAdmin().post("/api/rescores", edition);
    assertThat(begun.status()).as(begun.body()).isEqualTo(202);
    var path = "/api/rescores/" + begun.json().get("id").asText();
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () ->
                assertThat(app.asAdmin().get(path).json().get("state").asText())
                    .isEqualTo("finished"));
    return path;
  }

  @Test
  void shouldReportWhatAnotherScoreWouldSayAndAdoptItForTheFuture() {
    ward.admit("V-1901", "4", "Fennimore, Ysolde");
    ward.send(Sets.well("A-1901", "V-1901", Instant.now().minusSeconds(30)));
    await().atMost(PATIENCE).until(() -> ward.card("V-1901").isPresent());

    var path = finished(edition("tried", Instant.now().minusSeconds(3600)));

    var differences = app.asAdmin().get(path + "/differences").json();
    assertThat(differences)
        .anySatisfy(
            one -> {
              assertThat(one.get("assessment").asText()).isEqualTo("A-1901");
              assertThat(one.get("what").asText()).isEqualTo("score:pulse");
              assertThat(one.get("after").asText()).isEqualTo("1, any");
            });

    var later = finished(edition("later", Instant.now().plus(Duration.ofDays(36500))));
    assertThat(app.asAdmin().get(later).json().at("/counts/differing").asInt()).isZero();
    var adopted = app.asAdmin().post(later + "/adopt", "{}");
    assertThat(adopted.status()).as(adopted.body()).isEqualTo(200);
    assertThat(adopted.json().get("state").asText()).isEqualTo("adopted");
    assertThat(app.asAdmin().post(path + "/adopt", "{}").status()).isEqualTo(409);
  }

  @Test
  void shouldBeForAdministratorsAndNameTheFault() {
    var broken = "{\"from\":\"2026-01-05T08:00:00Z\",\"policy\":\"scoring: {}\"}";

    assertThat(ward.nurse().post("/api/rescores", broken).status()).isEqualTo(403);
    var refused = app.asAdmin().post("/api/rescores", broken);
    assertThat(refused.status()).isEqualTo(400);
    // The first thing that is missing, and in which text.
    assertThat(refused.body()).contains("policy: ").contains("validity");
    assertThat(app.asAdmin().get("/api/rescores/none").status()).isEqualTo(404);
  }
}
