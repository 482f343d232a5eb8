package org.driftward.scoring.stream.state;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.kafka.common.utils.Bytes;
import org.apache.kafka.streams.KeyValue;
import org.apache.kafka.streams.state.KeyValueStore;
import org.driftward.scoring.core.timeline.Entries;
import org.driftward.scoring.core.timeline.Entry;
import org.driftward.scoring.core.timeline.Head;
import org.driftward.scoring.core.timeline.Moment;
import org.driftward.scoring.core.timeline.Outcome;
import org.jspecify.annotations.Nullable;

/**
 * The history of one encounter in the state store of its task. An assessment costs two small
 * records: the entry under its clinical time, and its place in time under its id.
 */
final class StoredEntries implements Entries {

  private final KeyValueStore<Bytes, byte[]> store;
  private final Keys keys;
  private final KnownIds known;
  private final EntryCode entryCode;
  private final HeadCode headCode;

  /**
   * @param known what it has had, to be kept up to date
   */
  StoredEntries(
      KeyValueStore<Bytes, byte[]> store,
      String encounter,
      KnownIds known,
      EntryCode entries,
      HeadCode heads) {
    this.store = store;
    this.keys = new Keys(encounter);
    this.known = known;
    this.entryCode = entries;
    this.headCode = heads;
  }

  @Override
  public Optional<Entry> find(String assessment) {
    if (!known.mayHold(assessment)) {
      return Optional.empty();
    }
    var place = store.get(keys.place(assessment));
    if (place == null) {
      return Optional.empty();
    }
    var moment = new Moment(Keys.time(new ByteReader(place, 0)), assessment);
    return Optional.of(entryCode.read(moment, store.get(keys.entry(moment))).entry());
  }

  @Override
  public Iterator<Entry> after(@Nullable Moment moment) {
    var entries = new ArrayList<Entry>();
    try (var range = store.range(keys.entriesFrom(moment), keys.entriesEnd())) {
      while (range.hasNext()) {
        var next = range.next();
        var at = keys.moment(next.key);
        if (!at.equals(moment)) {
          entries.add(entryCode.read(at, next.value).entry());
        }
      }
    }
    return entries.iterator();
  }

  @Override
  public Optional<Head> checkpoint(@Nullable Moment before) {
    var end = before == null ? keys.checkpointsEnd() : keys.checkpoint(before);
    try (var range = store.reverseRange(keys.checkpointsFrom(null), end)) {
      while (range.hasNext()) {
        var next = range.next();
        var at = keys.moment(next.key);
        if (!at.equals(before)) {
          return Optional.of(headCode.read(at, next.value));
        }
      }
    }
    return Optional.empty();
  }

  boolean isEmpty() {
    try (var range = store.range(keys.entriesFrom(null), keys.entriesEnd())) {
      return !range.hasNext();
    }
  }

  /** Facts and the count of snapshots sent, as last kept with facts. */
  FactsCode.Kept facts() {
    var bytes = store.get(keys.facts());
    return bytes == null ? FactsCode.Kept.NOTHING : FactsCode.read(bytes);
  }

  /**
   * The count of snapshots sent when the last entry was appended. Retracted ones are never
   * appended, and may lie beyond.
   */
  long sequenceOfLast() {
    try (var range = store.reverseRange(keys.entriesFrom(null), keys.entriesEnd())) {
      while (range.hasNext()) {
        var next = range.next();
        var kept = entryCode.read(keys.moment(next.key), next.value);
        if (!kept.entry().retracted()) {
          return kept.sequence();
        }
      }
    }
    return 0;
  }

  /** Everything is made ready before the first write, so that a failure leaves the store whole. */
  void keep(Outcome outcome) {
    var kept = outcome.kept();
    var changes = changes(outcome);
    if (kept != null) {
      known.add(kept.id());
    }
    for (var change : changes) {
      store.put(change.key, change.value);
    }
  }

  /** What to put; a null value deletes. */
  private List<KeyValue<Bytes, byte @Nullable []>> changes(Outcome outcome) {
    long sequence = outcome.standing().sequence();
    var changes = new ArrayList<KeyValue<Bytes, byte @Nullable []>>();
    var removed = outcome.removed();
    var kept = outcome.kept();
    boolean samePlace = removed != null && kept != null && removed.moment().equals(kept.moment());
    if (removed != null && !samePlace) {
      changes.add(KeyValue.pair(keys.entry(removed.moment()), null));
      if (kept == null) {
        changes.add(KeyValue.pair(keys.place(removed.id()), null));
      }
    }
    if (kept != null) {
      changes.add(KeyValue.pair(keys.entry(kept.moment()), entryCode.write(kept, sequence)));
      if (!samePlace) {
        changes.add(KeyValue.pair(keys.place(kept.id()), Keys.time(kept.moment().takenAt())));
      }
    }
    if (outcome.rewrittenFrom() != null) {
      checkpointsFrom(outcome.rewrittenFrom())
          .forEach(stale -> changes.add(KeyValue.pair(stale, null)));
    }
    for (var head : outcome.checkpoints()) {
      var at = Objects.requireNonNull(head.at());
      changes.add(KeyValue.pair(keys.checkpoint(at), headCode.write(head)));
    }
    if (!outcome.appended()) {
      var facts = FactsCode.write(outcome.standing().facts(), sequence);
      changes.add(KeyValue.pair(keys.facts(), facts));
    }
    return changes;
  }

  private List<Bytes> checkpointsFrom(Moment from) {
    var stale = new ArrayList<Bytes>();
    try (var range = store.range(keys.checkpoint(from), keys.checkpointsEnd())) {
      range.forEachRemaining(next -> stale.add(next.key));
    }
    return stale;
  }
}
