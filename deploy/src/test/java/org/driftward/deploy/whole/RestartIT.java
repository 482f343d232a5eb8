package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a power cut in the middle of a busy minute may cost: nothing that was acknowledged. */
class RestartIT {

  private static final Duration PATIENCE = Duration.ofMinutes(2);
  private static final int BEFORE_THE_CUT = 40;

  @TempDir Path folder;

  private final List<String> accepted = new CopyOnWriteArrayList<>();

  @Test
  void shouldLoseAndDoubleNothingAndKeepTheEpisodeAndItsDeadline() throws Exception {
    var data = folder.resolve("data");
    String episode;
    String due;
    try (var app = RunningApp.start(data)) {
      var ward = Ward.open(app, "alder");
      ward.admit("V-1", "1", "Tolliver, Maud");
      ward.admit("V-2", "2", "Hexham, Orrin");
      ward.send(Sets.veryIll("ill", "V-1", Instant.now().minusSeconds(60)));
      await().atMost(PATIENCE).until(() -> !episodeOf(ward, "V-1").isMissingNode());
      episode = episodeOf(ward, "V-1").get("id").asText();
      due = episodeOf(ward, "V-1").get("due").asText();

      var stream = new Thread(() -> sendUntilTheCut(ward), "stream");
      stream.start();
      await().atMost(PATIENCE).until(() -> accepted.size() >= BEFORE_THE_CUT);
      app.kill();
      stream.join();

      assertThat(accepted).hasSizeGreaterThanOrEqualTo(BEFORE_THE_CUT);
      try (var again = RunningApp.start(data)) {
        var same = Ward.of(again, "alder");

        await()
            .atMost(PATIENCE)
            .untilAsserted(() -> assertThat(idsOf(same, "V-2")).containsAll(accepted));
        assertThat(idsOf(same, "V-2")).doesNotHaveDuplicates();
        await()
            .atMost(PATIENCE)
            .untilAsserted(() -> assertThat(snapshotTimes(same, "V-2")).doesNotHaveDuplicates());
        assertThat(episodeOf(same, "V-1").get("id").asText()).isEqualTo(episode);
        assertThat(episodeOf(same, "V-1").get("due").asText()).isEqualTo(due);
        assertThat(again.asAdmin().get("/api/journal/check").json().get("sound").asBoolean())
            .isTrue();
        assertThat(again.stop()).as("exit code after SIGTERM").isEqualTo(143);
      }
    }
  }

  private void sendUntilTheCut(Ward ward) {
    var start = Instant.now().minusSeconds(3600);
    for (int i = 0; i < 10_000; i++) {
      var id = "stream-" + i;
      try {
        if (ward.send(Sets.well(id, "V-2", start.plusSeconds(i))).status() != 202) {
          return;
        }
        accepted.add(id);
      } catch (AssertionError unanswered) {
        return;
      }
    }
  }

  private static JsonNode episodeOf(Ward ward, String encounter) {
    return ward.card(encounter)
        .map(card -> card.at("/episode"))
        .filter(JsonNode::isObject)
        .orElse(MissingNode.getInstance());
  }

  private static List<String> idsOf(Ward ward, String encounter) {
    var ids = new ArrayList<String>();
    ward.history(encounter).get("assessments").forEach(it -> ids.add(it.get("id").asText()));
    return ids;
  }

  private static List<String> snapshotTimes(Ward ward, String encounter) {
    var times = new ArrayList<String>();
    ward.history(encounter).get("snapshots").forEach(it -> times.add(it.get("asOf").asText()));
    return times;
  }
}
