package org.driftward.alerts.stream;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.alerts.store.Intake;
import org.driftward.alerts.store.Intake.News;
import org.driftward.ground.failure.Isolation;
import org.driftward.ground.failure.SetAside;
import org.driftward.ground.store.Quarantine;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.Snapshot;

/**
 * Takes batches of records; returns only when each is kept, in effect or in quarantine.
 * Thread-safe.
 */
@Singleton
public class StreamIntake {

  static final String PART = "alerts-reader";

  private static final JsonFormat<Snapshot> SNAPSHOT = JsonFormat.of(Snapshot.class);
  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);

  private final Intake intake;
  private final Quarantine quarantine;

  public StreamIntake(Intake intake, Quarantine quarantine) {
    this.intake = intake;
    this.quarantine = quarantine;
  }

  /**
   * @throws RuntimeException if the database is away; then nothing is lost, and the same batch must
   *     be taken again
   */
  void take(List<ConsumerRecord<String, byte[]>> batch) {
    var legible = new ArrayList<Legible>();
    // A tombstone says that an encounter is forgotten; its journal is not.
    Isolation.apart(
        batch.stream().filter(one -> one.value() != null).toList(),
        one -> legible.add(new Legible(one, read(one))),
        this::setAside);
    Isolation.together(
        legible,
        some -> intake.take(some.stream().map(Legible::news).toList()),
        (one, why) -> setAside(one.origin(), why));
  }

  private static News read(ConsumerRecord<String, byte[]> one) {
    return one.topic().equals(Topic.SNAPSHOTS.topic())
        ? new News.Picture(SNAPSHOT.read(one.value()))
        : new News.BedMove(ENCOUNTER.read(one.value()));
  }

  private void setAside(ConsumerRecord<String, byte[]> one, Throwable why) {
    var means =
        one.topic().equals(Topic.SNAPSHOTS.topic())
            ? "Something that was recorded has raised no alarm."
            : "A move is not known to what raises alarms.";
    quarantine.keep(
        SetAside.ofLog(one.topic(), one.partition(), one.offset(), PART, one.key(), means),
        one.value(),
        why);
  }

  private record Legible(ConsumerRecord<String, byte[]> origin, News news) {}
}
