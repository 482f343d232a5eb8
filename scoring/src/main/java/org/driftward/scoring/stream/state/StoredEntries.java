package org.driftward.scoring.stream.state;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.apache.kafka.common.utils.Bytes;
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
  private final EntryCode entryCode;
  private final HeadCode headCode;

  StoredEntries(
      KeyValueStore<Bytes, byte[]> store, String encounter, EntryCode entries, HeadCode heads) {
    this.store = store;
    this.keys = new Keys(encounter);
    this.entryCode = entries;
    this.headCode = heads;
  }

  @Override
  public Optional<Entry> find(String assessment) {
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

  /** Facts and the count of snapshots sent, as last kept with facts. */
  FactsCode.Kept facts() {
    var bytes = store.get(keys.facts());
    return bytes == null ? FactsCode.Kept.NOTHING : FactsCode.read(bytes);
  }

  /** The count of snapshots sent when the last entry was kept. */
  long sequenceOfLast() {
    try (var range = store.reverseRange(keys.entriesFrom(null), keys.entriesEnd())) {
      if (!range.hasNext()) {
        return 0;
      }
      var last = range.next();
      return entryCode.read(keys.moment(last.key), last.value).sequence();
    }
  }

  void keep(Outcome outcome) {
    long sequence = outcome.standing().sequence();
    var removed = outcome.removed();
    var kept = outcome.kept();
    boolean samePlace = removed != null && kept != null && removed.moment().equals(kept.moment());
    if (removed != null && !samePlace) {
      store.delete(keys.entry(removed.moment()));
      if (kept == null) {
        store.delete(keys.place(removed.id()));
      }
    }
    if (kept != null) {
      store.put(keys.entry(kept.moment()), entryCode.write(kept, sequence));
      if (!samePlace) {
        store.put(keys.place(kept.id()), Keys.time(kept.moment().takenAt()));
      }
    }
    if (outcome.rewrittenFrom() != null) {
      checkpointsFrom(outcome.rewrittenFrom()).forEach(store::delete);
    }
    for (var head : outcome.checkpoints()) {
      var at = head.at();
      if (at != null) {
        store.put(keys.checkpoint(at), headCode.write(head));
      }
    }
    if (!outcome.appended()) {
      store.put(keys.facts(), FactsCode.write(outcome.standing().facts(), sequence));
    }
  }

  private List<Bytes> checkpointsFrom(Moment from) {
    var stale = new ArrayList<Bytes>();
    try (var range = store.range(keys.checkpoint(from), keys.checkpointsEnd())) {
      range.forEachRemaining(next -> stale.add(next.key));
    }
    return stale;
  }
}
