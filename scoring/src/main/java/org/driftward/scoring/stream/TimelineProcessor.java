package org.driftward.scoring.stream;

import java.util.function.Supplier;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.header.Headers;
import org.apache.kafka.common.header.internals.RecordHeaders;
import org.apache.kafka.common.utils.Bytes;
import org.apache.kafka.streams.processor.PunctuationType;
import org.apache.kafka.streams.processor.api.Processor;
import org.apache.kafka.streams.processor.api.ProcessorContext;
import org.apache.kafka.streams.processor.api.Record;
import org.apache.kafka.streams.processor.api.RecordMetadata;
import org.apache.kafka.streams.state.KeyValueStore;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Editions.UnknownEditionException;
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
  private @Nullable Walk walk;

  TimelineProcessor(ScoringParts parts) {
    this.parts = parts;
    this.moves = new MoveCode(parts.catalogue());
    this.inbox = new Inbox(moves);
  }

  @Override
  public void init(ProcessorContext<String, byte[]> context) {
    KeyValueStore<Bytes, byte[]> store = context.getStateStore(ScoringTopology.STORE);
    this.context = context;
    var kept = new Histories(store, parts.timeline(), parts.catalogue(), parts.memory());
    this.histories = kept;
    this.walk = new Walk(kept, parts.timeline());
    context.schedule(Walk.PAUSE, PunctuationType.WALL_CLOCK_TIME, this::walkOn);
  }

  @Override
  public void process(Record<String, byte[]> received) {
    var at = require(context).recordMetadata().orElseThrow();
    var request = attempt(received, at, () -> read(received, at));
    if (request == null) {
      return;
    }
    var kept = require(histories);
    var learned = attempt(received, at, () -> kept.catchUp(received.key()));
    if (learned == null) {
      return;
    }
    send(learned, received.timestamp(), received.headers());
    var acceptedAt = AcceptedAt.of(received.headers());
    var outcome = attempt(received, at, () -> request.take(kept, acceptedAt));
    if (outcome != null) {
      send(outcome, received.timestamp(), received.headers());
      parts.metrics().taken(at.topic());
    }
  }

  /** What an attempt gives, or null if it failed: then the record has been set aside. */
  private <T> @Nullable T attempt(
      Record<String, byte[]> received, RecordMetadata at, Supplier<T> step) {
    try {
      return step.get();
    } catch (KafkaException | UnknownEditionException e) {
      throw e;
    } catch (RuntimeException e) {
      require(context).forward(Quarantine.of(received, at, e), ScoringTopology.REJECTED);
      parts.metrics().setAside();
      return null;
    }
  }

  /** Encounters that nothing arrives for learn of a new edition here. */
  private void walkOn(long wallClock) {
    for (var outcome : require(walk).some()) {
      send(outcome, wallClock, new RecordHeaders());
    }
  }

  private void send(Outcome outcome, long timestamp, Headers headers) {
    var task = require(context);
    for (var snapshot : outcome.snapshots()) {
      task.forward(
          new Record<>(snapshot.encounter(), SNAPSHOT.write(snapshot), timestamp),
          ScoringTopology.SNAPSHOTS);
    }
    for (var move : outcome.moves()) {
      task.forward(
          new Record<>(move.to(), moves.write(move), timestamp, headers), ScoringTopology.MOVES);
    }
    parts.metrics().done(outcome);
  }

  private Inbox.Request read(Record<String, byte[]> received, RecordMetadata at) {
    if (received.key() == null || received.value() == null) {
      throw new MalformedException("a record without a key or without a value");
    }
    return inbox.read(at.topic(), received.key(), received.value());
  }

  @Override
  public void close() {
    histories = null;
    walk = null;
  }

  private static <T> T require(@Nullable T part) {
    if (part == null) {
      throw new IllegalStateException("not initialised");
    }
    return part;
  }
}
