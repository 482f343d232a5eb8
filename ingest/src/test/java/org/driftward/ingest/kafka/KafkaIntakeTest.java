package org.driftward.ingest.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.driftward.ingest.kafka.House.assessment;
import static org.driftward.ingest.kafka.House.encounter;
import static org.driftward.ingest.kafka.House.heartRate;
import static org.driftward.ingest.kafka.House.outcome;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Accepted;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Refused;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Intake against a real broker. */
@Timeout(120)
class KafkaIntakeTest {

  private static Broker broker;
  private static House house;

  @BeforeAll
  static void start() {
    broker = Broker.start();
    house = new House(broker.access());
  }

  @AfterAll
  static void stop() {
    house.close();
    broker.close();
  }

  @Test
  void shouldKeepAnAssessmentUnderItsEncounterWithTheTimeOfAcceptance() throws Exception {
    outcome(house.intake.put("test", encounter("V-1", "ward-a", "1")));
    var sent = assessment("A-1", "V-1", heartRate(80), Finding.coded("consciousness", "alert"));

    var outcome = outcome(house.intake.accept("test", List.of(sent)));

    assertThat(outcome).isEqualTo(new Accepted(List.of("A-1")));
    var kept = only(Topic.ASSESSMENTS, "V-1");
    assertThat(JsonFormat.of(Assessment.class).read(kept.value())).isEqualTo(sent);
    assertThat(new String(kept.headers().lastHeader("accepted-at").value(), UTF_8))
        .isEqualTo(Long.toString(House.NOW.toEpochMilli()));
  }

  @Test
  void shouldKeepNothingOfARequestWithOneFault() throws Exception {
    outcome(house.intake.put("test", encounter("V-2", "ward-a", "2")));
    var before = house.counted("driftward.assessments.refused", "monitor");

    var outcome =
        outcome(
            house.intake.accept(
                "feed-2",
                List.of(
                    assessment("A-2", "V-2", heartRate(80)),
                    assessment("A-3", "V-2", heartRate(999)))));

    assertThat(outcome)
        .isInstanceOfSatisfying(
            Refused.class,
            refused ->
                assertThat(refused.faults())
                    .extracting(Fault::pointer)
                    .containsExactly("/1/findings/0/value"));
    assertThat(records(Topic.ASSESSMENTS, "V-2")).isEmpty();
    assertThat(only(Topic.REJECTED, "feed-2").value()).isNotEmpty();
    assertThat(house.counted("driftward.assessments.refused", "monitor")).isEqualTo(before + 1);
  }

  @Test
  void shouldKeepARefusedInputByteForByteWithItsReasons() throws Exception {
    var bytes = new byte[] {0, (byte) 0xff, '{', '"', (byte) 0xc3};
    var received = new Received("feed-3", Source.HL7, "mllp", "x-application/hl7-v2+er7", bytes);
    var fault = new Fault("/1", "wrong-type", "no segment");

    outcome(house.intake.refuse(received, List.of(fault)));

    var kept = JsonFormat.of(Rejection.class).read(only(Topic.REJECTED, "feed-3").value());
    assertThat(kept.bytes()).isEqualTo(bytes);
    assertThat(kept.faults()).containsExactly(fault);
    assertThat(kept.receivedAt()).isEqualTo(House.NOW);
    assertThat(kept.source()).isEqualTo(Source.HL7);
    assertThat(kept.target()).isEqualTo("mllp");
  }

  @Test
  void shouldKeepARefusedInputOfTheLargestBody() throws Exception {
    var bytes = new byte[4 << 20];
    var received = new Received("feed-4", Source.FHIR, "POST /fhir", "application/json", bytes);

    outcome(house.intake.refuse(received, List.of(new Fault("", "malformed-json", "line 1"))));

    var kept = JsonFormat.of(Rejection.class).read(only(Topic.REJECTED, "feed-4").value());
    assertThat(kept.bytes()).hasSize(bytes.length);
  }

  @Test
  void shouldCountVersionsAndStaysAndWriteNothingForWhatIsAsItWas() throws Exception {
    outcome(house.intake.put("test", encounter("V-5", "ward-a", "5")));
    outcome(house.intake.put("test", encounter("V-5", "ward-a", "5")));
    outcome(house.intake.put("test", encounter("V-5", "ward-b", "1")));

    var versions =
        records(Topic.ENCOUNTERS, "V-5").stream()
            .map(each -> JsonFormat.of(Encounter.class).read(each.value()))
            .toList();

    assertThat(versions).extracting(Encounter::version).containsExactly(1L, 2L);
    assertThat(versions.get(1).stays()).hasSize(2);
    assertThat(house.directory.find("V-5")).contains(versions.get(1));
  }

  @Test
  void shouldFindWhatAnotherProcessHasPut() throws Exception {
    try (var other = new House(broker.access())) {
      assertThat(house.directory.find("V-6")).isEmpty();
      outcome(other.intake.put("test", encounter("V-6", "ward-a", "6")));

      assertThat(house.directory.find("V-6")).isPresent();
    }
  }

  @Test
  void shouldFindWithinARequestWhatAnotherProcessHasPutBefore() throws Exception {
    try (var other = new House(broker.access())) {
      outcome(other.intake.put("test", encounter("V-61", "ward-a", "61")));
      var request = house.directory.forOneRequest();

      assertThat(request.apply("nowhere")).isEmpty();
      assertThat(request.apply("V-61")).isPresent();
      assertThat(request.apply("nowhere")).isEmpty();
    }
  }

  @Test
  void shouldContinueTheVersionsOfAnotherProcess() throws Exception {
    try (var other = new House(broker.access())) {
      outcome(house.intake.put("test", encounter("V-7", "ward-a", "1")));
      outcome(other.intake.put("test", encounter("V-7", "ward-a", "2")));
      outcome(house.intake.put("test", encounter("V-7", "ward-a", "3")));

      assertThat(house.directory.find("V-7").orElseThrow().version()).isEqualTo(3);
    }
  }

  @Test
  void shouldReadTheEncountersAgainAfterARestart() throws Exception {
    outcome(house.intake.put("test", encounter("V-8", "ward-a", "8")));

    try (var later = new House(broker.access())) {
      assertThat(later.directory.find("V-8")).isPresent();
      assertThat(later.directory.condition().well()).isTrue();
    }
  }

  @Test
  void shouldAskToRepeatWhileKafkaIsAwayAndGoOnWhenItReturns() throws Exception {
    try (var ownBroker = Broker.start();
        var ownHouse = new House(ownBroker.access(), Duration.ofSeconds(2))) {
      repeated(() -> ownHouse.intake.put("test", encounter("V-1", "ward-a", "1")));
      var sent = List.of(assessment("A-1", "V-1", heartRate(80)));
      ownBroker.stop();

      var asked = System.nanoTime();
      assertThatThrownBy(() -> outcome(ownHouse.intake.accept("test", sent)))
          .isInstanceOf(ExecutionException.class)
          .hasCauseInstanceOf(UnavailableException.class);
      assertThatThrownBy(() -> ownHouse.directory.find("V-unknown"))
          .isInstanceOf(UnavailableException.class);
      assertThat(Duration.ofNanos(System.nanoTime() - asked)).isLessThan(Duration.ofSeconds(20));

      ownBroker.startAgain();
      assertThat(repeated(() -> ownHouse.intake.accept("test", sent)))
          .isEqualTo(new Accepted(List.of("A-1")));
      assertThat(
              ownBroker.read(Topic.ASSESSMENTS).stream()
                  .map(each -> JsonFormat.of(Assessment.class).read(each.value()))
                  .distinct())
          .containsExactlyElementsOf(sent);
    }
  }

  @Test
  void shouldAskToRepeatBeforeItHasStarted() {
    var stopped = new House(broker.access());
    stopped.close();

    assertThatThrownBy(
            () ->
                outcome(stopped.intake.accept("test", List.of(assessment("A", "V", heartRate(1))))))
        .hasCauseInstanceOf(UnavailableException.class);
  }

  /** As a sender does that was asked to repeat. */
  private static Outcome repeated(Supplier<CompletionStage<Outcome>> request) throws Exception {
    while (true) {
      try {
        return outcome(request.get());
      } catch (ExecutionException e) {
        assertThat(e).hasCauseInstanceOf(UnavailableException.class);
        TimeUnit.MILLISECONDS.sleep(200);
      }
    }
  }

  private static ConsumerRecord<String, byte[]> only(Topic topic, String key) {
    var found = records(topic, key);
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  private static List<ConsumerRecord<String, byte[]>> records(Topic topic, String key) {
    return broker.read(topic).stream().filter(each -> each.key().equals(key)).toList();
  }
}
