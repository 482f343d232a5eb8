package org.driftward.ingest.hl7.mllp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.driftward.ingest.hl7.Feed;
import org.driftward.testing.Broker;
import org.driftward.testing.Nightly;
import org.junit.jupiter.api.Test;

/**
 * Mutated messages over real sockets: each is answered AA, AE or AR, no connection is stuck, and
 * exactly what was refused is on the topic of refusals. {@code -Ddriftward.fuzz.hl7=n} sends more,
 * {@code -Ddriftward.fuzz.seed=n} others.
 */
class Hl7FuzzTest {

  private static final int INPUTS = Integer.getInteger("driftward.fuzz.hl7", Nightly.tenth(40_000));
  private static final long SEED = Long.getLong("driftward.fuzz.seed", 20260105L);
  private static final int SENDERS = 32;
  private static final Pattern ANSWER = Pattern.compile("(?s)MSH.*\rMSA.(AA|AE|AR)(.*)");

  @Test
  void shouldAnswerEveryMutatedMessage() throws Exception {
    var settings =
        Map.of(
            "driftward.ingest.mllp.max-connections", "64",
            "driftward.ingest.kafka.max-block", "PT60S",
            "driftward.ingest.kafka.delivery-timeout", "PT120S");
    try (var broker = Broker.start();
        var feed = new Feed(broker.access(), settings)) {
      var metrics = new MllpMetrics(feed.meters);
      var listener =
          new MllpListener(feed.config, new HandedIn(feed.door, feed.metrics, metrics), metrics);
      listener.start();
      await().until(() -> listener.condition().well());
      for (int i = 0; i < SENDERS; i++) {
        feed.admit("V-" + i);
      }
      var before = Feed.rejections(broker).size();
      try {
        var tally = send(listener.port().orElseThrow());

        assertThat(tally.accepted + tally.refused).isEqualTo(INPUTS / SENDERS * SENDERS);
        assertThat(tally.accepted).isPositive();
        assertThat(tally.refused).isPositive();
        var kept = Feed.rejections(broker);
        assertThat(kept.size() - before).isEqualTo(tally.kept);
        assertThat(kept).allSatisfy(one -> assertThat(one.faults()).isNotEmpty());
      } finally {
        listener.stop();
      }
    }
  }

  private static final class Tally {
    int accepted;
    int refused;

    /** Refused, or accepted but for codes that are not mapped. */
    int kept;

    void add(Tally other) {
      accepted += other.accepted;
      refused += other.refused;
      kept += other.kept;
    }
  }

  private static Tally send(int port) throws Exception {
    var senders = Executors.newFixedThreadPool(SENDERS);
    try {
      var work = new ArrayList<Callable<Tally>>();
      for (int i = 0; i < SENDERS; i++) {
        var random = new Random(SEED + i);
        var mutations = new Mutations(random, "V-" + i);
        work.add(() -> one(port, mutations));
      }
      var sum = new Tally();
      for (var done : senders.invokeAll(work, 30, TimeUnit.MINUTES)) {
        sum.add(done.get());
      }
      return sum;
    } finally {
      senders.shutdownNow();
    }
  }

  private static Tally one(int port, Mutations mutations) throws IOException {
    var tally = new Tally();
    try (var sender = new Socketed(port)) {
      for (int i = 0; i < INPUTS / SENDERS; i++) {
        var input = mutations.next();
        sender.send(input);
        var answer = ANSWER.matcher(sender.answer());
        assertThat(answer.matches())
            .as(() -> "no answer of ours to: " + new String(input, StandardCharsets.UTF_8))
            .isTrue();
        boolean accepted = answer.group(1).equals("AA");
        tally.accepted += accepted ? 1 : 0;
        tally.refused += accepted ? 0 : 1;
        tally.kept += !accepted || answer.group(2).contains("not mapped") ? 1 : 0;
      }
    }
    return tally;
  }
}
