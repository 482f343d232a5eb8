package org.driftward.ingest.hl7.mllp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.util.Terser;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.driftward.ingest.hl7.Feed;
import org.driftward.ingest.hl7.Text;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Real sockets to a real broker. The well-behaved sender is the client of the HL7 v2 library, with
 * its own typed reading and validation of what we answer; the others are bytes. MLLP by HL7 v2
 * appendix C.
 */
class MllpListenerTest {

  private static final int MOST_CONNECTIONS = 12;
  private static final Duration PATIENCE = Duration.ofSeconds(2);

  private static Broker broker;
  private static Feed feed;
  private static MllpListener listener;

  @BeforeAll
  static void open() {
    broker = Broker.start();
    feed =
        new Feed(
            broker.access(),
            Map.of(
                "driftward.ingest.mllp.max-connections", String.valueOf(MOST_CONNECTIONS),
                "driftward.ingest.mllp.max-message", "64K",
                "driftward.ingest.mllp.patience", PATIENCE.toString(),
                "driftward.ingest.kafka.max-block", "PT3S",
                "driftward.ingest.kafka.delivery-timeout", "PT6S"));
    var metrics = new MllpMetrics(feed.meters);
    listener =
        new MllpListener(feed.config, new HandedIn(feed.door, feed.metrics, metrics), metrics);
    listener.start();
    await().until(() -> listener.condition().well());
    feed.admit("V-1");
  }

  @AfterAll
  static void close() {
    listener.stop();
    feed.close();
    broker.close();
  }

  @ParameterizedTest
  @ValueSource(strings = {"2.3", "2.8"})
  void shouldAnswerTheLibrarysOwnClient(String version) throws Exception {
    try (var context = new DefaultHapiContext()) {
      var connection = context.newClient("127.0.0.1", port(), false);
      try {
        var message =
            context
                .getPipeParser()
                .parse(
                    Text.message(
                        Text.msh("ORU^R01", "M-1", version, "20260105115500+0000", ""),
                        Text.pid("P-V-1"),
                        Text.pv1("LINDEN^12^A", "V-1"),
                        Text.obr("F-1", "20260105115000+0000"),
                        Text.heartRate("88")));
        connection.getInitiator().setTimeout(60, TimeUnit.SECONDS);

        Message answer = connection.getInitiator().sendAndReceive(message);

        assertThat(answer.getClass().getPackageName())
            .endsWith("v" + version.replace(".", "") + ".message");
        assertThat(new Terser(answer).get("/MSA-1")).isEqualTo("AA");
        assertThat(new Terser(answer).get("/MSA-2")).isEqualTo("M-1");
        assertThat(Feed.assessments(broker, "V-1")).isNotEmpty();
      } finally {
        connection.close();
      }
    }
  }

  @Test
  void shouldTakeManyMessagesOnOneConnectionWithNoiseBetween() throws IOException {
    try (var sender = new Socketed(port())) {
      for (int i = 0; i < 5; i++) {
        sender.write("noise\r\n");
        sender.send(Text.results("M-2" + i, "V-1", Text.heartRate("8" + i)));
        assertThat(sender.answer()).contains("MSA|AA|M-2" + i);
      }
    }
  }

  @Test
  void shouldTakeTwoMessagesSentInOneBreath() throws IOException {
    var one = Text.results("M-31", "V-1", Text.heartRate("81"));
    var other = Text.results("M-32", "V-1", Text.heartRate("82"));
    try (var sender = new Socketed(port())) {
      sender.write("\u000b" + one + "\u001c\r\u000b" + other + "\u001c\r");

      assertThat(sender.answer()).contains("MSA|AA|M-31");
      assertThat(sender.answer()).contains("MSA|AA|M-32");
    }
  }

  @Test
  void shouldTakeAMessageThatComesByteByByte() throws IOException {
    try (var sender = new Socketed(port())) {
      for (byte one :
          ("\u000b" + Text.results("M-40", "V-1", Text.heartRate("84")) + "\u001c\r")
              .getBytes(StandardCharsets.UTF_8)) {
        sender.write(new byte[] {one});
      }

      assertThat(sender.answer()).contains("MSA|AA|M-40");
    }
  }

  @Test
  void shouldEndASenderThatDribblesAndServeTheOthersMeanwhile() throws IOException {
    try (var dribbling = new Socketed(port());
        var half = new Socketed(port());
        var other = new Socketed(port())) {
      half.write("\u000bMSH|^~\\&|HALF");
      dribbling.write("\u000bMSH|^~\\&|DRIBBLE");

      other.send(Text.results("M-50", "V-1", Text.heartRate("85")));
      assertThat(other.answer()).contains("MSA|AA|M-50");

      long begun = System.nanoTime();
      while (System.nanoTime() - begun < PATIENCE.multipliedBy(10).toNanos()) {
        try {
          dribbling.write("x");
          TimeUnit.MILLISECONDS.sleep(100);
        } catch (IOException | InterruptedException e) {
          break;
        }
      }
      assertThat(Duration.ofNanos(System.nanoTime() - begun)).isLessThan(PATIENCE.multipliedBy(10));
      assertThat(half.answer()).isEmpty();
      await()
          .untilAsserted(
              () ->
                  assertThat(Feed.rejections(broker))
                      .anySatisfy(
                          one ->
                              assertThat(new String(one.bytes(), StandardCharsets.UTF_8))
                                  .startsWith("MSH|^~\\&|HALF")));
    }
  }

  @Test
  void shouldKeepAMessageThatBreaksOffAndGoOnWithTheNext() throws IOException {
    try (var sender = new Socketed(port())) {
      sender.write("\u000bMSH|^~\\&|BROKEN-OFF");
      sender.send(Text.results("M-60", "V-1", Text.heartRate("86")));

      assertThat(sender.answer()).contains("MSA|AA|M-60");
    }
    assertThat(Feed.rejections(broker))
        .anySatisfy(
            one ->
                assertThat(new String(one.bytes(), StandardCharsets.UTF_8))
                    .isEqualTo("MSH|^~\\&|BROKEN-OFF"));
  }

  @Test
  void shouldRejectWhatIsTooLargeKeepItsBeginningAndGoOn() throws IOException {
    var large = Text.msh("ORU^R01", "M-70") + "\rNTE|1||" + "x".repeat(300_000);
    try (var sender = new Socketed(port())) {
      sender.send(large);
      assertThat(sender.answer()).contains("MSA|AR|M-70");

      sender.send(Text.results("M-71", "V-1", Text.heartRate("87")));
      assertThat(sender.answer()).contains("MSA|AA|M-71");
    }
    assertThat(Feed.rejections(broker))
        .filteredOn(one -> one.faults().get(0).rule().equals("too-many"))
        .anySatisfy(
            one -> {
              assertThat(one.faults().get(0).detail()).contains(large.length() + " bytes");
              assertThat(new String(one.bytes(), StandardCharsets.UTF_8))
                  .isEqualTo(large.substring(0, 65_536));
            });
  }

  @Test
  void shouldEndAMessageThatNeverEnds() throws Exception {
    try (var sender = new Socketed(port())) {
      sender.write("\u000b" + Text.msh("ORU^R01", "M-75") + "\rNTE|1||" + "x".repeat(70_000));

      assertThat(sender.answer()).isEmpty();
    }
    await()
        .untilAsserted(
            () ->
                assertThat(Feed.rejections(broker))
                    .anySatisfy(
                        one ->
                            assertThat(new String(one.bytes(), StandardCharsets.UTF_8))
                                .contains("|M-75|")));
  }

  @Test
  void shouldTurnAwayMoreThanItCanServeAndServeAgainWhenOneLeaves() throws IOException {
    await().until(() -> connected() == 0);
    var senders = new ArrayList<Socketed>();
    try {
      for (int i = 0; i < MOST_CONNECTIONS; i++) {
        senders.add(new Socketed(port()));
      }
      await().until(() -> connected() == MOST_CONNECTIONS);
      try (var late = new Socketed(port())) {
        assertThat(late.answer()).isEmpty();
      }
    } finally {
      for (var sender : senders) {
        sender.close();
      }
    }
    await().until(() -> connected() == 0);
    try (var next = new Socketed(port())) {
      next.send(Text.results("M-80", "V-1", Text.heartRate("87")));
      assertThat(next.answer()).contains("MSA|AA|M-80");
    }
  }

  @Test
  void shouldAnswerThatItCannotKeepAnythingWhileKafkaIsAwayAndRecoverByItself() throws IOException {
    broker.stop();
    try (var sender = new Socketed(port())) {
      sender.send(Text.results("M-90", "V-1", Text.heartRate("89")));
      assertThat(sender.answer())
          .contains("MSA|AE|M-90")
          .contains("|207^Application internal error^HL70357|");
    } finally {
      broker.startAgain();
    }
    await()
        .atMost(Duration.ofSeconds(60))
        .untilAsserted(
            () -> {
              try (var sender = new Socketed(port())) {
                sender.send(Text.results("M-91", "V-1", Text.heartRate("89")));
                assertThat(sender.answer()).contains("MSA|AA|M-91");
              }
            });
  }

  @Test
  void shouldAcknowledgeOnlyWhatKafkaAcknowledged() throws Exception {
    broker.stop();
    var sender = new Socketed(port());
    try {
      sender.send(Text.results("M-95", "V-1", Text.heartRate("95")));
      var answer =
          CompletableFuture.supplyAsync(
              () -> {
                try {
                  return sender.answer();
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
      // Less than Kafka is given to answer: nothing may have been said by now.
      TimeUnit.MILLISECONDS.sleep(1500);
      assertThat(answer).isNotDone();
      assertThat(answer.get(60, TimeUnit.SECONDS)).contains("MSA|AE|M-95");
    } finally {
      sender.close();
      broker.startAgain();
    }
  }

  private static double connected() {
    return feed.meters.get("driftward.mllp.connections").gauge().value();
  }

  private static int port() {
    return listener.port().orElseThrow();
  }
}
