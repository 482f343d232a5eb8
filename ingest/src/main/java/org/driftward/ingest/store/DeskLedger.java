package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.Collection;
import java.util.Map;
import java.util.OptionalLong;
import org.driftward.ingest.contract.Rejection;
import org.jdbi.v3.core.Handle;

/**
 * What the desk has read from the topics. A batch and the position behind it are one transaction,
 * so nothing is counted twice and nothing is left out, whatever dies when. Thread-safe.
 */
@Singleton
public class DeskLedger {

  private final IntakeStore database;
  private final Clock clock;

  public DeskLedger(IntakeStore database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /** A partition of a topic. */
  public record Slot(String topic, int partition) {}

  /** From the first offset of a batch to the one behind its last. */
  public record Span(long from, long next) {}

  /** Records of several partitions, in the terms of the desk. */
  public record Batch(
      Map<Slot, Span> spans, Collection<FeedMinute> minutes, Collection<Rejection> refusals) {}

  /** Somebody else has read this far already; read again from the kept position. */
  public static final class OvertakenException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OvertakenException() {
      super("another process reads the same partition");
    }
  }

  /** Empty where nothing was read yet. */
  public OptionalLong position(Slot slot) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT next_offset FROM ingest.topic_position"
                        + " WHERE topic = :topic AND partition = :partition")
                .bind("topic", slot.topic())
                .bind("partition", slot.partition())
                .mapTo(Long.class)
                .findOne()
                .map(OptionalLong::of)
                .orElseGet(OptionalLong::empty));
  }

  /**
   * @throws OvertakenException if a span does not begin at or behind the kept position
   */
  public void keep(Batch batch) {
    database.transaction(
        handle -> {
          batch.spans().forEach((slot, span) -> advance(handle, slot, span));
          Refusals.write(handle, batch.refusals());
          ForeignCodes.write(handle, batch.refusals());
          Feeds.add(handle, batch.minutes());
          return batch;
        });
  }

  /** Offsets may have gaps, so a batch may begin behind the kept position, never before it. */
  private static void advance(Handle handle, Slot slot, Span span) {
    int moved =
        handle
            .createUpdate(
                """
                INSERT INTO ingest.topic_position (topic, partition, next_offset)
                VALUES (:topic, :partition, :next)
                ON CONFLICT (topic, partition) DO UPDATE SET next_offset = excluded.next_offset
                WHERE topic_position.next_offset <= :from
                """)
            .bind("topic", slot.topic())
            .bind("partition", slot.partition())
            .bind("next", span.next())
            .bind("from", span.from())
            .execute();
    if (moved == 0) {
      throw new OvertakenException();
    }
  }

  /** Drops minutes that nobody asks for any more. */
  public void forget() {
    database.transaction(
        handle -> {
          Feeds.forget(handle, clock.instant());
          return clock;
        });
  }
}
