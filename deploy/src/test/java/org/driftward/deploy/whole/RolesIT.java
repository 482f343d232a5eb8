package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The same image started twice with fewer roles, on a broker and a database that belong to neither:
 * together they do what one does alone, and each serves only its own.
 */
class RolesIT {

  private static final Duration PATIENCE = Duration.ofMinutes(2);

  @TempDir Path folder;

  @Test
  void shouldShareTheWorkAndServeOnlyWhatEachPlays() {
    try (var outside = new Outside(folder);
        var front = start(outside, "front", "ingest,dashboard");
        var back = start(outside, "back", "scoring,alerts")) {
      var ward = Ward.open(front, "alder");
      ward.admit("V-1", "1", "Tolliver, Maud");
      ward.send(Sets.veryIll("ill", "V-1", Instant.now().minusSeconds(60)));

      await()
          .atMost(PATIENCE)
          .untilAsserted(
              () ->
                  assertThat(ward.card("V-1"))
                      .hasValueSatisfying(
                          card -> {
                            assertThat(card.at("/score/low").asInt()).isEqualTo(13);
                            assertThat(card.at("/episode/state").asText()).isEqualTo("open");
                          }));
      var elsewhere = Ward.of(back, "alder").nurse();
      for (var path : List.of("/wards", "/api/wards", "/api/encounters/V-1")) {
        assertThat(elsewhere.get(path).status()).as(path).isEqualTo(404);
      }
      var refused = elsewhere.post("/api/assessments", "{}");
      assertThat(refused.status()).isEqualTo(404);
      assertThat(refused.type()).startsWith(Problem.MEDIA_TYPE);
      assertThat(elsewhere.get("/api/episodes").status()).isEqualTo(200);
      assertThat(ward.nurse().get("/api/episodes").status()).isEqualTo(404);
      assertThat(folder.resolve("front/postgres")).doesNotExist();
      assertThat(folder.resolve("front/kafka")).doesNotExist();
    }
  }

  private RunningApp start(Outside outside, String name, String roles) {
    var environment = outside.environment();
    environment.put("DRIFTWARD_ROLES", roles);
    return RunningApp.start(folder.resolve(name), environment);
  }
}
