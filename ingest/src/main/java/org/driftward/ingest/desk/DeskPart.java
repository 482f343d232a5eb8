package org.driftward.ingest.desk;

import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.common.TopicPartition;
import org.driftward.ground.failure.SetAside;
import org.driftward.ground.kafka.GroupReader;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.store.Quarantine;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.store.DeskLedger;
import org.driftward.ingest.store.DeskLedger.Slot;

/**
 * Reads what came in and what was refused into the desk's tables. All processes share the work;
 * where each partition was read to stands in the database, beside what was read.
 */
@Singleton
public class DeskPart implements RolePart, GroupReader.Keeper {

  private static final String NAME = "intake-desk";
  private static final List<String> TOPICS =
      List.of(Topic.ASSESSMENTS.topic(), Topic.ENCOUNTERS.topic(), Topic.REJECTED.topic());
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(10);
  private static final int MOST = 500;
  private static final int ROUNDS_TO_FORGET = 5_000;

  private final DeskLedger ledger;
  private final Quarantine quarantine;
  private final GroupReader reader;
  private int rounds;

  public DeskPart(KafkaAccess access, DeskLedger ledger, Quarantine quarantine) {
    this.ledger = ledger;
    this.quarantine = quarantine;
    this.reader =
        new GroupReader(
            "driftward-" + NAME,
            "driftward-intake-desk",
            access,
            TOPICS,
            MOST,
            Map.of(),
            LONGEST_PAUSE,
            this);
  }

  @Override
  public void keep(ConsumerRecords<String, byte[]> polled) {
    ledger.keep(RecordReader.read(polled, this::setAside));
  }

  private void setAside(ConsumerRecord<String, byte[]> one, Throwable why) {
    quarantine.keep(
        SetAside.ofLog(
            one.topic(),
            one.partition(),
            one.offset(),
            NAME,
            null,
            "A record is missing from what came in and what was refused."),
        one.value(),
        why);
  }

  /** Puts every partition that is given to us to where the database says. */
  @Override
  public void assigned(Consumer<String, byte[]> consumer, Collection<TopicPartition> partitions) {
    for (var partition : partitions) {
      ledger
          .position(new Slot(partition.topic(), partition.partition()))
          .ifPresentOrElse(
              next -> consumer.seek(partition, next),
              () -> consumer.seekToBeginning(List.of(partition)));
    }
  }

  @Override
  public void polled(Consumer<String, byte[]> consumer) {
    if (rounds++ % ROUNDS_TO_FORGET == 0) {
      ledger.forget();
    }
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public void start() {
    reader.start();
  }

  @Override
  public void stop() {
    reader.stop();
  }

  @Override
  public Condition condition() {
    return reader.condition();
  }
}
