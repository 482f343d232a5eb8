package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.driftward.deploy.whole.Caller.Answer;

/** A CSV file of which one part has been sent. */
final class HalfSentFile {

  private static final String HEADER = "encounter,patient,takenAt,heart-rate [/min]\n";

  private final Caller admin;
  private final String path;
  private final String offset;
  private final String encounter;

  private HalfSentFile(Caller admin, String path, String offset, String encounter) {
    this.admin = admin;
    this.path = path;
    this.offset = offset;
    this.encounter = encounter;
  }

  static HalfSentFile begin(RunningApp app, String encounter) {
    var headers = Map.of("Content-Type", "text/csv", "Upload-Complete", "?0");
    var begun =
        app.asAdmin().send("POST", "/api/imports?key=half", headers, HEADER + row(encounter, 70));
    assertThat(begun.status()).as(begun.body()).isEqualTo(202);
    return new HalfSentFile(
        app.asAdmin(),
        "/api/imports/" + begun.json().get("id").asText(),
        begun.header("Upload-Offset").orElseThrow(),
        encounter);
  }

  /** A whole small file. */
  static Answer send(RunningApp app, String encounter) {
    return app.asAdmin()
        .send(
            "POST",
            "/api/imports",
            Map.of("Content-Type", "text/csv"),
            HEADER + row(encounter, 71));
  }

  Answer sendRest() {
    var headers =
        Map.of(
            "Content-Type", "application/partial-upload",
            "Upload-Offset", offset,
            "Upload-Complete", "?1");
    return admin.send("PATCH", path, headers, row(encounter, 72));
  }

  /** Sends the rest and waits until both rows are accepted. */
  void finish(Duration patience) {
    await().atMost(patience).until(() -> sendRest().status() == 202);
    await()
        .atMost(patience)
        .untilAsserted(
            () -> {
              var now = admin.get(path).json();
              assertThat(now.get("state").asText()).isEqualTo("finished");
              assertThat(now.get("accepted").asInt()).isEqualTo(2);
            });
  }

  private static String row(String encounter, int heartRate) {
    var takenAt = Instant.now().minusSeconds(3600 + heartRate);
    return "%s,P-%s,%s,%d\n".formatted(encounter, encounter, takenAt, heartRate);
  }
}
