package org.driftward.ingest.web;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.fuzz.JsonMutator;
import org.driftward.ingest.fuzz.MemoryHouse;
import org.driftward.testing.Nightly;
import org.junit.jupiter.api.Test;

/**
 * Broken bodies of {@code POST /api/assessments}, each answered: kept, or refused with reasons and
 * its exact bytes. More with {@code -Ddriftward.fuzz=FACTOR}.
 */
class AssessmentFuzzTest {

  private static final int INPUTS = Nightly.tenth(20_000) * Integer.getInteger("driftward.fuzz", 1);

  private static final String ASSESSMENT =
      """
      {"id":"A-1","revision":1,"status":"final","encounter":"V-1","patient":"P-1",
       "takenAt":"2031-03-02T05:00:00Z","recordedAt":"2031-03-02T05:01:00Z","source":"bedside",
       "by":"n.fairweather","findings":[
        {"code":"respiratory-rate","value":22,"unit":"/min"},
        {"code":"temperature","value":38.2,"unit":"Cel"},
        {"code":"pulse-amplitude","site":"dorsalis-pedis","side":"left","grade":1},
        {"code":"consciousness","coded":"alert"},
        {"code":"note","text":"slept well"}]}
      """;

  private static final String AMENDED =
      ASSESSMENT
          .replace("\"revision\":1", "\"revision\":2")
          .replace("\"final\"", "\"amended\"")
          .replace("\"by\"", "\"reason\":\"typing error\",\"by\"");

  private final MemoryHouse house = new MemoryHouse();
  private final AssessmentResource resource =
      new AssessmentResource(
          new AssessmentGate(
              house,
              house,
              new AssessmentReader(MemoryHouse.LIMITS),
              MemoryHouse.RULES,
              MemoryHouse.CLOCK),
          MemoryHouse.bodyLimit(),
          MemoryHouse.sender());

  @Test
  void shouldAnswerEveryBrokenAssessment() {
    var mutator =
        new JsonMutator(List.of(ASSESSMENT, AMENDED, "[" + ASSESSMENT + "," + AMENDED + "]"));
    int kept = 0;
    for (int seed = 0; seed < INPUTS; seed++) {
      var body = mutator.next(new Random(seed));
      int before = house.rejected();
      Response answer;
      try {
        answer = resource.post(body).toCompletableFuture().join();
      } catch (RuntimeException | StackOverflowError e) {
        throw new AssertionError(
            "seed " + seed + ": " + new String(body, StandardCharsets.UTF_8), e);
      }
      assertThat(answer.getStatus()).as("seed %d", seed).isIn(202, 400);
      if (answer.getStatus() == 400) {
        assertThat(house.rejected()).as("seed %d", seed).isEqualTo(before + 1);
        assertThat(house.rejections.get(0).faults()).as("seed %d", seed).isNotEmpty();
        assertThat(house.rejections.get(0).bytes()).as("seed %d", seed).isEqualTo(body);
      } else {
        kept++;
      }
      house.forget();
    }
    assertThat(kept).isBetween(INPUTS / 50, INPUTS - INPUTS / 10);
  }
}
