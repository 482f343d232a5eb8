package org.driftward.ingest.inbox;

import static io.restassured.RestAssured.given;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.security.TestSecurity;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.IntakeDesk;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.hl7.Text;
import org.driftward.ingest.web.SeesWardA;
import org.driftward.testing.Broker;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * What others write to the inbox, with every gate, on a real broker and database. HL7 v2 fields by
 * the standard's chapters 2, 3 and 7; the FHIR resource by R4, Observation.
 */
@QuarkusTest
@Timeout(120)
@TestSecurity(user = "feeds", roles = AccountRole.INTEGRATION, augmentors = SeesWardA.class)
class InboxOverKafkaTest {

  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final Sight ENGINEER = new Sight("engineer", WardScope.EVERY_WARD);

  @Inject Broker broker;
  @Inject IntakeDesk desk;

  @Test
  void shouldKeepTheSameValueFromJsonFhirAndHl7() {
    admit("V-i1");
    send("V-i1", null, json("A-i1", "V-i1", "88"));
    send(
        "V-i1",
        "application/fhir+json; charset=UTF-8",
        """
        {"resourceType": "Observation", "status": "final",
         "code": {"coding": [{"system": "http://loinc.org", "code": "8867-4"}]},
         "subject": {"identifier": {"value": "P-V-i1"}},
         "encounter": {"identifier": {"value": "V-i1"}},
         "effectiveDateTime": "2026-01-05T11:50:00Z",
         "valueQuantity": {"value": 88, "system": "http://unitsofmeasure.org", "code": "/min"}}""");
    send("V-i1", "application/hl7-v2+er7", Text.results("M-i1", "V-i1", Text.heartRate("88")));

    await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept("V-i1")).hasSize(3));
    assertThat(kept("V-i1"))
        .extracting(Assessment::source)
        .containsExactlyInAnyOrder(
            Assessment.Source.MONITOR, Assessment.Source.FHIR, Assessment.Source.HL7);
    assertThat(kept("V-i1").stream().map(Assessment::findings).distinct()).hasSize(1);
    assertThat(kept("V-i1"))
        .extracting(Assessment::takenAt)
        .allMatch(kept("V-i1").get(0).takenAt()::equals);
  }

  @Test
  void shouldAdmitByKafkaWhatItThenAssesses() {
    broker.send(
        List.of(
            with(
                Map.of("kind", "encounter"),
                "V-i2",
                "{\"patient\":{\"id\":\"P-V-i2\"},\"ward\":\"ward-a\",\"bed\":\"2\","
                    + "\"admitted\":\"2026-01-05T08:00:00Z\"}"),
            with(Map.of(), "V-i2", json("A-i2", "V-i2", "70"))));

    await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept("V-i2")).hasSize(1));
  }

  @Test
  void shouldRefuseWithTheFaultsOfTheDoorOverHttpAndShowItOnTheDesk() {
    admit("V-i3");
    var broken =
        json("A-i3", "V-i3", "11200").replace("2026-01-05T11:50:00Z", "2026-01-05T14:00:00Z");
    given().contentType("application/json").body(broken).post("/api/assessments");
    broker.send(List.of(with(Map.of("feed", "monitors"), "V-i3", broken)));

    await().atMost(PATIENCE).untilAsserted(() -> assertThat(refused("kafka/monitors")).hasSize(1));
    var byKafka = refused("kafka/monitors").get(0);
    var byHttp =
        refused("http/feeds").stream()
            .filter(one -> one.base64().equals(byKafka.base64()))
            .toList();
    assertThat(byKafka.faults()).isEqualTo(byHttp.get(0).faults());
    assertThat(byKafka.faults()).extracting(Fault::rule).contains("out-of-range", "in-the-future");
    assertThat(byKafka.target()).isEqualTo("POST /api/assessments");
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () ->
                assertThat(desk.refusals(Filter.OPEN, ENGINEER).lines())
                    .extracting(IntakeDesk.Line::id)
                    .contains(byKafka.id()));
    assertThat(kept("V-i3")).isEmpty();
  }

  @Test
  void shouldNotLetWhatIsBrokenStopWhatComesBehind() {
    admit("V-i4");
    broker.send(
        List.of(
            with(Map.of("feed", "broken"), "V-i4", "{\"id\": "),
            new ProducerRecord<>(Topic.INBOX.topic(), "V-i4", null),
            with(Map.of("feed", "broken", "content-type", "text/plain"), "V-i4", "hello"),
            with(Map.of("feed", "broken", "kind", "wish"), "V-i4", "{}"),
            with(Map.of("feed", "broken", "content-type", "application/fhir+xml"), "V-i4", "<a/>"),
            with(
                Map.of("feed", "broken", "content-type", "application/fhir+json"),
                "V-i4",
                "{\"resourceType\": \"Patient\"}"),
            with(Map.of("feed", "broken", "content-type", "application/hl7-v2+er7"), "V-i4", "MSH"),
            with(Map.of(), "V-i4", json("A-i4", "V-i4", "71"))));

    await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept("V-i4")).hasSize(1));
    assertThat(refused("kafka/broken"))
        .extracting(one -> one.faults().get(0).rule())
        .containsExactlyInAnyOrder(
            "malformed-json",
            "unsupported",
            "unsupported",
            "malformed-resource",
            "malformed-resource",
            "malformed-resource");
    assertThat(refused("kafka/unnamed")).hasSize(1);
  }

  /** A stranger who copies an example must not be refused. */
  @Test
  void shouldKeepTheExamplesOfTheAsyncApi() throws IOException {
    var document = new YAMLMapper().readTree(Path.of("..", "docs", "asyncapi.yaml").toFile());
    for (var message : List.of("inbox-encounter", "inbox-assessment")) {
      for (var example : document.at("/components/messages/" + message + "/examples")) {
        var headers = new HashMap<String, String>();
        example
            .get("headers")
            .properties()
            .forEach(h -> headers.put(h.getKey(), h.getValue().asText()));
        broker.send(List.of(with(headers, "V-5001", example.get("payload").toString())));
      }
    }

    await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept("V-5001")).hasSize(2));
    assertThat(kept("V-5001")).extracting(Assessment::revision).containsExactly(1, 2);
    assertThat(refused("kafka/monitors-heron")).isEmpty();
    assertThat(refused("kafka/admissions")).isEmpty();
  }

  private static String json(String id, String encounter, String value) {
    return """
        {"id": "%s", "encounter": "%s", "patient": "P-%s", "takenAt": "2026-01-05T11:50:00Z",
         "source": "monitor", "by": "m-1",
         "findings": [{"code": "heart-rate", "value": %s, "unit": "/min"}]}"""
        .formatted(id, encounter, encounter, value);
  }

  private void admit(String encounter) {
    given()
        .contentType("application/json")
        .body(
            """
            {"patient": {"id": "P-%s"}, "ward": "ward-a", "bed": "1",
             "admitted": "2026-01-05T08:00:00Z"}"""
                .formatted(encounter))
        .put("/api/encounters/" + encounter)
        .then()
        .statusCode(200);
  }

  private void send(String key, @Nullable String contentType, String value) {
    broker.send(
        List.of(
            with(
                contentType == null ? Map.of() : Map.of("content-type", contentType), key, value)));
  }

  private static ProducerRecord<String, byte[]> with(
      Map<String, String> headers, String key, String value) {
    var sent = new ProducerRecord<>(Topic.INBOX.topic(), key, value.getBytes(UTF_8));
    headers.forEach((name, text) -> sent.headers().add(name, text.getBytes(UTF_8)));
    return sent;
  }

  private List<Assessment> kept(String encounter) {
    var format = JsonFormat.of(Assessment.class);
    return broker.read(Topic.ASSESSMENTS).stream()
        .filter(one -> one.key().equals(encounter))
        .map(one -> format.read(one.value()))
        .toList();
  }

  private List<Rejection> refused(String origin) {
    var format = JsonFormat.of(Rejection.class);
    return broker.read(Topic.REJECTED).stream()
        .filter(one -> one.key().equals(origin))
        .map(one -> format.read(one.value()))
        .toList();
  }
}
