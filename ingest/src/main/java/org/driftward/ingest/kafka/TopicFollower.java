package org.driftward.ingest.kafka;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Supplier;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.WakeupException;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.part.Worker;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Topic;
import org.jboss.logging.Logger;

/**
 * One thread that reads the whole encounters topic and goes on following it, without a group: every
 * process holds every encounter. {@link #caughtUp()}, {@link #condition()} and {@link #stop()} may
 * be called from any thread.
 */
final class TopicFollower implements Worker.Round {

  private static final Logger LOG = Logger.getLogger(TopicFollower.class);
  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);
  private static final Duration POLL = Duration.ofMillis(500);
  private static final Duration POLL_WHILE_AIMING = Duration.ofMillis(20);

  /**
   * How long the broker may sit on a fetch. It answers one connection in order, so a question about
   * the end of the topic waits behind the fetch before it, and with it every bed move.
   */
  private static final Duration FETCH = Duration.ofMillis(25);

  private static final Duration AFTER_FAILURE = Duration.ofMillis(500);
  private static final Duration ANSWER = Duration.ofSeconds(2);

  private final KafkaAccess access;
  private final EncounterTable table;
  private final Queue<CompletableFuture<Void>> asked = new ConcurrentLinkedQueue<>();
  private final List<CompletableFuture<Void>> waiting = new ArrayList<>();
  private final Worker worker = new Worker("encounters", AFTER_FAILURE, this);
  private volatile boolean stopping;
  private volatile Consumer<String, byte[]> consumer;

  TopicFollower(KafkaAccess access, EncounterTable table) {
    this.access = access;
    this.table = table;
  }

  void start() {
    worker.start();
  }

  /** Completes when everything that the topic holds at the time of the call has been read. */
  CompletableFuture<Void> caughtUp() {
    var ticket = new CompletableFuture<Void>();
    asked.add(ticket);
    wakeUp();
    return ticket;
  }

  Condition condition() {
    return worker.condition();
  }

  void stop() {
    stopping = true;
    wakeUp();
    worker.stop();
  }

  private void wakeUp() {
    var open = consumer;
    if (open != null) {
      open.wakeup();
    }
  }

  /** A failure starts over from the beginning: the table takes the same records again unharmed. */
  @Override
  public Duration run() {
    try (var open = new KafkaConsumer<String, byte[]>(settings())) {
      consumer = open;
      new Run(open).follow();
    } catch (WakeupException e) {
      // Only when stopping.
    } catch (KafkaException e) {
      asked.removeIf(CompletableFuture::isDone);
      waiting.removeIf(CompletableFuture::isDone);
      throw e;
    } finally {
      consumer = null;
    }
    return Duration.ZERO;
  }

  private Map<String, Object> settings() {
    var settings = new HashMap<String, Object>(access.settings());
    settings.put(ConsumerConfig.CLIENT_ID_CONFIG, "driftward-encounters");
    settings.put(ConsumerConfig.KEY_DESERIALIZER_CLASS_CONFIG, StringDeserializer.class);
    settings.put(ConsumerConfig.VALUE_DESERIALIZER_CLASS_CONFIG, ByteArrayDeserializer.class);
    settings.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    settings.put(ConsumerConfig.FETCH_MAX_WAIT_MS_CONFIG, Math.toIntExact(FETCH.toMillis()));
    settings.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    settings.put(ConsumerConfig.ALLOW_AUTO_CREATE_TOPICS_CONFIG, false);
    settings.put(ConsumerConfig.DEFAULT_API_TIMEOUT_MS_CONFIG, Math.toIntExact(ANSWER.toMillis()));
    return settings;
  }

  /** The topic followed with one consumer; used by the follower's thread alone. */
  private final class Run {

    private final Consumer<String, byte[]> open;
    private Map<TopicPartition, Long> goal = Map.of();
    private boolean aiming;

    Run(Consumer<String, byte[]> open) {
      this.open = open;
    }

    void follow() {
      worker.say(Condition.ill("reading the encounters"));
      assign();
      aim();
      while (!stopping) {
        poll();
        if (aiming && reached()) {
          aiming = false;
          worker.say(Condition.ok());
          waiting.forEach(ticket -> ticket.complete(null));
          waiting.clear();
        }
        if (!aiming && !asked.isEmpty()) {
          aim();
        }
      }
    }

    private void assign() {
      var partitions = insist(() -> open.partitionsFor(Topic.ENCOUNTERS.topic(), ANSWER));
      if (partitions.isEmpty()) {
        throw new KafkaException("there is no topic of encounters yet");
      }
      open.assign(
          partitions.stream()
              .map(partition -> new TopicPartition(partition.topic(), partition.partition()))
              .toList());
      open.seekToBeginning(open.assignment());
    }

    /** Whoever has asked by now is answered when the end of the topic as of now is reached. */
    private void aim() {
      for (var ticket = asked.poll(); ticket != null; ticket = asked.poll()) {
        waiting.add(ticket);
      }
      goal = insist(() -> open.endOffsets(open.assignment(), ANSWER));
      aiming = true;
    }

    private boolean reached() {
      return goal.entrySet().stream()
          .allMatch(
              entry -> insist(() -> open.position(entry.getKey(), ANSWER)) >= entry.getValue());
    }

    /** A wake-up is meant for {@link #poll()}; anywhere else it would only lose an answer. */
    private <T> T insist(Supplier<T> question) {
      while (true) {
        try {
          return question.get();
        } catch (WakeupException e) {
          if (stopping) {
            throw e;
          }
        }
      }
    }

    private void poll() {
      try {
        open.poll(aiming ? POLL_WHILE_AIMING : POLL).forEach(this::take);
      } catch (WakeupException e) {
        // Somebody asks, or we are to stop; the loop looks.
      }
    }

    private void take(ConsumerRecord<String, byte[]> encounter) {
      if (encounter.value() == null) {
        table.remove(encounter.key());
        return;
      }
      try {
        table.take(ENCOUNTER.read(encounter.value()));
      } catch (MalformedException e) {
        LOG.errorf(
            "An encounter that cannot be read is skipped: partition %d, offset %d",
            encounter.partition(), encounter.offset());
      }
    }
  }
}
