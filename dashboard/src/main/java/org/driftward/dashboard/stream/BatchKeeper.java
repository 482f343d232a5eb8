package org.driftward.dashboard.stream;

import java.util.ArrayList;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.dashboard.stream.RecordReader.Legible;
import org.driftward.ground.failure.Isolation;
import org.driftward.ground.failure.SetAside;
import org.driftward.ground.store.Quarantine;

/**
 * Keeps what was polled. A record that cannot be read, or that the database refuses for what it
 * says, is set aside, so that one bad record never stops a ward's board; everything else fails as a
 * whole and is read again.
 */
final class BatchKeeper {

  private final ReadModel model;
  private final BoardMetrics metrics;
  private final Quarantine quarantine;

  BatchKeeper(ReadModel model, BoardMetrics metrics, Quarantine quarantine) {
    this.model = model;
    this.metrics = metrics;
    this.quarantine = quarantine;
  }

  void keep(Iterable<ConsumerRecord<String, byte[]>> records) {
    var legible = new ArrayList<Legible>();
    Isolation.apart(
        records,
        one -> {
          // A tombstone of compaction says nothing.
          if (one.value() != null) {
            legible.add(RecordReader.read(one));
          }
        },
        this::setAside);
    Isolation.together(
        legible,
        some -> model.keep(RecordReader.batch(some)).forEach(metrics::visible),
        (one, why) -> setAside(one.origin(), why));
  }

  private void setAside(ConsumerRecord<String, byte[]> one, Throwable why) {
    metrics.unreadable();
    quarantine.keep(
        SetAside.ofLog(
            one.topic(),
            one.partition(),
            one.offset(),
            ReadModelPart.NAME,
            one.key(),
            "Something that was recorded is not shown."),
        one.value(),
        why);
  }
}
