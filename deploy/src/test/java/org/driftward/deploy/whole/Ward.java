package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.StreamSupport;
import org.driftward.deploy.whole.Caller.Answer;

/** An invented ward with a charge nurse who may do everything on it. */
final class Ward {

  static final String PASSWORD = "as-long-as-it-needs";

  private final String name;
  private final Caller nurse;

  private Ward(String name, Caller nurse) {
    this.name = name;
    this.nurse = nurse;
  }

  /** Makes the nurse's account. */
  static Ward open(RunningApp app, String name) {
    var made =
        app.asAdmin()
            .put(
                "/api/accounts/" + account(name),
                """
                {"displayName":"Tamsin Orchard","roles":["charge"],"wards":["%s"],"password":"%s"}
                """
                    .formatted(name, PASSWORD));
    assertThat(made.status()).as(made.body()).isEqualTo(204);
    return of(app, name);
  }

  /** The ward as it was, after a restart. */
  static Ward of(RunningApp app, String name) {
    return new Ward(name, app.as(account(name), PASSWORD));
  }

  String name() {
    return name;
  }

  /** The nurse's, with {@link #PASSWORD}. */
  String account() {
    return account(name);
  }

  private static String account(String ward) {
    return "charge." + ward;
  }

  Caller nurse() {
    return nurse;
  }

  /** Makes another account on this ward, with {@link #PASSWORD}. */
  void account(RunningApp app, String account, String displayName, String role) {
    var made =
        app.asAdmin()
            .put(
                "/api/accounts/" + account,
                """
                {"displayName":"%s","roles":["%s"],"wards":["%s"],"password":"%s"}
                """
                    .formatted(displayName, role, name, PASSWORD));
    assertThat(made.status()).as(made.body()).isEqualTo(204);
  }

  Answer admit(String encounter, String bed, String patientName) {
    return nurse.put(
        "/api/encounters/" + encounter,
        """
        {"patient":{"id":"P-%s","name":"%s","birthDate":"1951-04-02","sex":"female"},
         "ward":"%s","bed":"%s","admitted":"%s"}
        """
            .formatted(encounter, patientName, name, bed, Instant.now().minusSeconds(7200)));
  }

  Answer send(String assessment) {
    return nurse.post("/api/assessments", assessment);
  }

  JsonNode board() {
    var answer = nurse.get("/api/wards/" + name + "/board");
    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    return answer.json();
  }

  /** The patient's card on the board. */
  Optional<JsonNode> card(String encounter) {
    return StreamSupport.stream(board().get("patients").spliterator(), false)
        .filter(card -> card.get("encounter").asText().equals(encounter))
        .findFirst();
  }

  /** Until the patient's card shows what is asked for; fails with what is missing. */
  void awaitCard(String encounter, Duration patience, Consumer<JsonNode> shown) {
    await()
        .atMost(patience)
        .untilAsserted(() -> assertThat(card(encounter)).hasValueSatisfying(shown));
  }

  JsonNode history(String encounter) {
    var answer = nurse.get("/api/encounters/" + encounter + "/history");
    assertThat(answer.status()).as(answer.body()).isEqualTo(200);
    return answer.json();
  }
}
