package org.driftward.scoring.stream;

import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.utils.Bytes;
import org.apache.kafka.streams.processor.api.Processor;
import org.apache.kafka.streams.processor.api.ProcessorContext;
import org.apache.kafka.streams.processor.api.Record;
import org.apache.kafka.streams.processor.api.RecordMetadata;
import org.apache.kafka.streams.state.KeyValueStore;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Outcome;
import org.driftward.scoring.stream.state.Histories;
import org.jspecify.annotations.Nullable;

/**
 * Reads a record, lets the history of its encounter decide, sends what there is to say. One for
 * each task, used by its thread alone.
 */
final class TimelineProcessor implements Processor<String, byte[], String, byte[]> {

  private static final JsonFormat<Snapshot> SNAPSHOT = JsonFormat.of(Snapshot.class);

  private final ScoringParts parts;
  private final Inbox inbox;
  private final MoveCode moves;
  private @Nullable ProcessorContext<String, byte[]> context;
  private @Nullable Histories histories;

  TimelineProcessor(ScoringParts parts) {
    this.parts = parts;
    this.moves = new MoveCode(parts.catalogue());
    this.inbox = new Inbox(moves);
  }

  @Override
  public void init(ProcessorContext<String, byte[]> context) {
    KeyValueStore<Bytes, byte[]> store = context.getStateStore(ScoringTopology.STORE);
    this.context = context;
    this.histories = new Histories(store, parts.timeline(), parts.catalogue(), parts.remembered());
  }

  @Override
  public void process(Record<String, byte[]> received) {
    var task = require(context);
    var at = task.recordMetadata().orElseThrow();
    Outcome outcome;
    try {
      outcome = decide(received, at);
    } catch (KafkaException e) {
      throw e;
    } catch (RuntimeException e) {
      task.forward(Quarantine.of(received, at, e), ScoringTopology.REJECTED);
      parts.metrics().setAside();
      return;
    }
    for (var snapshot : outcome.snapshots()) {
      task.forward(
          new Record<>(snapshot.encounter(), SNAPSHOT.write(snapshot), received.timestamp()),
          ScoringTopology.SNAPSHOTS);
    }
    for (var move : outcome.moves()) {
      task.forward(
          new Record<>(move.to(), moves.write(move), received.timestamp(), received.headers()),
          ScoringTopology.MOVES);
    }
    parts.metrics().done(at.topic(), outcome);
  }

  private Outcome decide(Record<String, byte[]> received, RecordMetadata at) {
    if (received.key() == null || received.value() == null) {
      throw new MalformedException("a record without a key or without a value");
    }
    return inbox
        .read(at.topic(), received.key(), received.value())
        .take(require(histories), AcceptedAt.of(received.headers()));
  }

  @Override
  public void close() {
    histories = null;
  }

  private static <T> T require(@Nullable T part) {
    if (part == null) {
      throw new IllegalStateException("not initialised");
    }
    return part;
  }
}
