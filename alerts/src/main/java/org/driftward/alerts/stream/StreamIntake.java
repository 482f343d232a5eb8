package org.driftward.alerts.stream;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.alerts.store.Database;
import org.driftward.alerts.store.Intake;
import org.driftward.alerts.store.Intake.News;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.Snapshot;

/** Takes batches of records; returns only when each is kept, in effect or in quarantine. */
@Singleton
public class StreamIntake {

  private static final JsonFormat<Snapshot> SNAPSHOT = JsonFormat.of(Snapshot.class);
  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);

  private final Intake intake;
  private final Poison poison;

  public StreamIntake(Intake intake, Poison poison) {
    this.intake = intake;
    this.poison = poison;
  }

  /**
   * @throws RuntimeException if the database is away; then nothing is lost, and the same batch must
   *     be taken again
   */
  void take(List<ConsumerRecord<String, byte[]>> batch) {
    var legible = new ArrayList<Legible>();
    for (var one : batch) {
      // A tombstone says that an encounter is forgotten; its journal is not.
      if (one.value() != null) {
        read(one, legible);
      }
    }
    if (legible.isEmpty()) {
      return;
    }
    try {
      intake.take(legible.stream().map(Legible::news).toList());
    } catch (RuntimeException e) {
      if (!Database.isHopeless(e)) {
        throw e;
      }
      oneByOne(legible);
    }
  }

  /** Something in the batch cannot be kept; the others must not wait for it. */
  private void oneByOne(List<Legible> batch) {
    for (var one : batch) {
      try {
        intake.take(List.of(one.news()));
      } catch (RuntimeException e) {
        if (!Database.isHopeless(e)) {
          throw e;
        }
        poison.keep(one.origin(), e);
      }
    }
  }

  private void read(ConsumerRecord<String, byte[]> one, List<Legible> legible) {
    try {
      News news =
          one.topic().equals(Topic.SNAPSHOTS.topic())
              ? new News.Picture(SNAPSHOT.read(one.value()))
              : new News.BedMove(ENCOUNTER.read(one.value()));
      legible.add(new Legible(one, news));
    } catch (MalformedException e) {
      poison.keep(one, e);
    }
  }

  private record Legible(ConsumerRecord<String, byte[]> origin, News news) {}
}
