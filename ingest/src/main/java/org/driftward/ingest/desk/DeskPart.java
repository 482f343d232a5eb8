package org.driftward.ingest.desk;

import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerRebalanceListener;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.WakeupException;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.driftward.ingest.contract.KafkaAccess;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.store.DeskLedger;
import org.driftward.ingest.store.DeskLedger.Slot;
import org.driftward.ingest.work.Repeating;
import org.jspecify.annotations.Nullable;

/**
 * Reads what came in and what was refused into the desk's tables. All processes share the work;
 * where each partition was read to stands in the database, beside what was read. After any failure
 * the consumer is thrown away and a new one begins there.
 */
@Singleton
public class DeskPart implements RolePart {

  private static final String GROUP = "driftward-intake-desk";
  private static final List<String> TOPICS =
      List.of(Topic.ASSESSMENTS.topic(), Topic.ENCOUNTERS.topic(), Topic.REJECTED.topic());
  private static final Duration POLL = Duration.ofMillis(500);
  private static final int MOST = 500;
  private static final int ROUNDS_TO_FORGET = 5_000;

  private final KafkaAccess access;
  private final DeskLedger ledger;
  private final Repeating work = new Repeating("intake-desk", this::round);
  private volatile @Nullable Consumer<String, byte[]> consumer;
  private volatile boolean stopping;
  private int rounds;

  public DeskPart(KafkaAccess access, DeskLedger ledger) {
    this.access = access;
    this.ledger = ledger;
  }

  /** Waits in its poll, so it never needs to rest. */
  private boolean round() {
    try {
      if (stopping) {
        return false;
      }
      var open = open();
      var records = open.poll(POLL);
      if (!records.isEmpty()) {
        ledger.keep(RecordReader.read(records));
      }
      if (rounds++ % ROUNDS_TO_FORGET == 0) {
        ledger.forget();
      }
      return true;
    } catch (WakeupException e) {
      return false;
    } catch (RuntimeException e) {
      close();
      throw e;
    }
  }

  private Consumer<String, byte[]> open() {
    var known = consumer;
    if (known != null) {
      return known;
    }
    var opened =
        new KafkaConsumer<>(settings(), new StringDeserializer(), new ByteArrayDeserializer());
    opened.subscribe(TOPICS, new FromTheLedger(opened));
    consumer = opened;
    return opened;
  }

  private void close() {
    var open = consumer;
    consumer = null;
    if (open != null) {
      open.close();
    }
  }

  /** Puts every partition that is given to us to where the database says. */
  private final class FromTheLedger implements ConsumerRebalanceListener {
    private final Consumer<String, byte[]> open;

    FromTheLedger(Consumer<String, byte[]> open) {
      this.open = open;
    }

    @Override
    public void onPartitionsAssigned(Collection<TopicPartition> partitions) {
      for (var partition : partitions) {
        ledger
            .position(new Slot(partition.topic(), partition.partition()))
            .ifPresentOrElse(
                next -> open.seek(partition, next), () -> open.seekToBeginning(List.of(partition)));
      }
    }

    @Override
    public void onPartitionsRevoked(Collection<TopicPartition> partitions) {
      // What was read is kept before the next poll; nothing is in hand.
    }
  }

  private Map<String, Object> settings() {
    var settings = new HashMap<String, Object>(access.settings());
    settings.put(ConsumerConfig.GROUP_ID_CONFIG, GROUP);
    settings.put(ConsumerConfig.CLIENT_ID_CONFIG, GROUP);
    settings.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    settings.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    settings.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    settings.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, MOST);
    settings.put(ConsumerConfig.ALLOW_AUTO_CREATE_TOPICS_CONFIG, false);
    return settings;
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "intake-desk";
  }

  @Override
  public void start() {
    stopping = false;
    work.start();
  }

  @Override
  public void stop() {
    stopping = true;
    var open = consumer;
    if (open != null) {
      open.wakeup();
    }
    work.stop();
    close();
  }

  @Override
  public Condition condition() {
    return work.condition();
  }
}
