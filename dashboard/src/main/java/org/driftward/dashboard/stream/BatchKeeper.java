package org.driftward.dashboard.stream;

import java.sql.SQLException;
import java.util.List;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.dashboard.store.Batch;
import org.driftward.dashboard.store.ReadModel;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what was polled. The failure policy: a record that cannot be read, or that the database
 * refuses for what it says, is set aside with a line in the log and a count, so that one bad record
 * never stops a ward's board; everything else fails as a whole and is read again. The record stays
 * in its topic.
 */
final class BatchKeeper {

  private static final Logger LOG = Logger.getLogger(BatchKeeper.class);

  private final ReadModel model;
  private final BoardMetrics metrics;

  BatchKeeper(ReadModel model, BoardMetrics metrics) {
    this.model = model;
    this.metrics = metrics;
  }

  void keep(Iterable<ConsumerRecord<String, byte[]>> records) {
    try {
      keep(RecordReader.read(records, this::setAside));
    } catch (RuntimeException e) {
      if (!refusedForItsContent(e)) {
        throw e;
      }
      records.forEach(this::keepAlone);
    }
  }

  private void keepAlone(ConsumerRecord<String, byte[]> record) {
    try {
      // Unreadable ones were set aside with the batch.
      keep(RecordReader.read(List.of(record), again -> {}));
    } catch (RuntimeException e) {
      if (!refusedForItsContent(e)) {
        throw e;
      }
      setAside(record);
    }
  }

  private void keep(Batch batch) {
    model.keep(batch).forEach(metrics::visible);
  }

  private void setAside(ConsumerRecord<String, byte[]> record) {
    metrics.unreadable();
    LOG.errorf(
        "A record was set aside: topic %s, partition %d, offset %d",
        record.topic(), record.partition(), record.offset());
  }

  /** SQLSTATE classes 22 and 23: the data itself is wrong; trying again will not help. */
  private static boolean refusedForItsContent(@Nullable Throwable failure) {
    for (var cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException sql && sql.getSQLState() != null) {
        return sql.getSQLState().startsWith("22") || sql.getSQLState().startsWith("23");
      }
    }
    return false;
  }
}
