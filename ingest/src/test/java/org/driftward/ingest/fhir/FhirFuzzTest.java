package org.driftward.ingest.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.fuzz.JsonMutator;
import org.driftward.ingest.fuzz.MemoryHouse;
import org.driftward.ingest.fuzz.XmlMutator;
import org.driftward.ingest.mapping.ShippedCodes;
import org.driftward.testing.Nightly;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.junit.jupiter.api.Test;

/**
 * Thousands of broken resources (tens of thousands at night), each answered: kept, or refused with
 * reasons that are on the topic of refusals with the exact bytes. More with {@code
 * -Ddriftward.fuzz=FACTOR}; the seed of a failing input is in its message.
 */
class FhirFuzzTest {

  private static final int FACTOR = Integer.getInteger("driftward.fuzz", 1);
  private static final List<String> BUNDLES =
      Stream.of("transaction", "batch", "collection")
          .map(type -> FhirSamples.bundle(type, FhirSamples.OBSERVATIONS))
          .toList();

  private final MemoryHouse house = new MemoryHouse();
  private final FhirResource resource =
      new FhirResource(
          new FhirFormat(),
          new FhirIntake(
              house,
              house,
              Catalogue.shipped(),
              ShippedCodes.MAP,
              MemoryHouse.RULES,
              MemoryHouse.LIMITS,
              MemoryHouse.CLOCK),
          MemoryHouse.bodyLimit(),
          MemoryHouse.sender());

  private interface Mutator {
    byte[] next(Random random);
  }

  private interface Sender {
    Response send(byte[] body);
  }

  @Test
  void shouldAnswerEveryBrokenObservationInJson() {
    var mutator = new JsonMutator(FhirSamples.OBSERVATIONS);
    run(14_000, mutator::next, body -> resource.observation(FhirFormat.JSON, null, body));
  }

  @Test
  void shouldAnswerEveryBrokenBundleInJson() {
    var mutator = new JsonMutator(BUNDLES);
    run(14_000, mutator::next, body -> resource.bundle(FhirFormat.JSON, body));
  }

  @Test
  void shouldAnswerEveryBrokenObservationInXml() {
    var mutator =
        new XmlMutator(
            FhirSamples.OBSERVATIONS.stream()
                .map(json -> FhirSamples.xml(Observation.class, json))
                .toList());
    run(8_000, mutator::next, body -> resource.observation(FhirFormat.XML, null, body));
  }

  @Test
  void shouldAnswerEveryBrokenBundleInXml() {
    var mutator =
        new XmlMutator(BUNDLES.stream().map(json -> FhirSamples.xml(Bundle.class, json)).toList());
    run(6_000, mutator::next, body -> resource.bundle(FhirFormat.XML, body));
  }

  private void run(int atNight, Mutator mutator, Sender sender) {
    int inputs = Nightly.tenth(atNight) * FACTOR;
    int kept = 0;
    for (int seed = 0; seed < inputs; seed++) {
      var body = mutator.next(new Random(seed));
      int before = house.rejected();
      Response answer;
      try {
        answer = sender.send(body);
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError("seed " + seed + ": " + text(body), e);
      }
      assertThat(answer.getStatus()).as("seed %d", seed).isIn(200, 201, 400);
      boolean refused =
          answer.getStatus() == 400 || answer.getEntity().toString().contains("400 Bad Request");
      if (refused) {
        assertThat(house.rejected()).as("seed %d", seed).isGreaterThan(before);
        assertThat(last().faults()).as("seed %d", seed).isNotEmpty();
        assertThat(last().bytes()).as("seed %d", seed).isEqualTo(body);
      } else {
        kept++;
      }
      house.forget();
    }
    // Neither everything nor nothing is broken by a mutation or three.
    assertThat(kept).isBetween(inputs / 50, inputs - inputs / 10);
  }

  private Rejection last() {
    return house.rejections.get(house.rejections.size() - 1);
  }

  private static String text(byte[] body) {
    return new String(body, StandardCharsets.UTF_8);
  }
}
