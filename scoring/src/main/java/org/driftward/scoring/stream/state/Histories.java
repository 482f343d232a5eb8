package org.driftward.scoring.stream.state;

import java.time.Instant;
import java.util.function.Supplier;
import org.apache.kafka.common.utils.Bytes;
import org.apache.kafka.streams.state.KeyValueStore;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.core.timeline.Entry;
import org.driftward.scoring.core.timeline.Outcome;
import org.driftward.scoring.core.timeline.Standing;
import org.driftward.scoring.core.timeline.Timeline;
import org.jspecify.annotations.Nullable;

/**
 * The histories of all encounters of one task: loads, lets the timeline decide, keeps. Used by the
 * task's thread alone.
 *
 * <p>Where the encounters seen last stand is remembered. Throw this object away with the task: when
 * a transaction is aborted the store goes back, and memory must not stay ahead of it.
 */
public final class Histories {

  private final KeyValueStore<Bytes, byte[]> store;
  private final Supplier<Timeline> timeline;
  private final EntryCode entryCode;
  private final HeadCode headCode;
  private final Standings standings;

  /**
   * @param timeline under the editions in force at the moment it is asked for
   * @param memory how many encounters to remember at most
   */
  public Histories(
      KeyValueStore<Bytes, byte[]> store,
      Supplier<Timeline> timeline,
      Catalogue catalogue,
      Memory memory) {
    this.store = store;
    this.timeline = timeline;
    this.entryCode = new EntryCode(catalogue);
    this.headCode = new HeadCode(catalogue);
    this.standings = new Standings(headCode, timeline, memory);
  }

  /** One decision of the timeline about an encounter. */
  private interface Decision {
    Outcome make(Standing standing, StoredEntries entries);
  }

  /** Lets the encounter adopt the editions that it does not know yet. */
  public Outcome catchUp(String encounter) {
    return decide(encounter, (at, entries) -> timeline.get().adopt(at, entries));
  }

  /**
   * The next encounter of this task in the order of the store, or null after the last.
   *
   * @param encounter or null for the first
   */
  public @Nullable String encounterAfter(@Nullable String encounter) {
    var from = encounter == null ? null : new Keys(encounter).end();
    try (var range = store.range(from, null)) {
      return range.hasNext() ? Keys.encounter(range.next().key) : null;
    }
  }

  public Outcome take(String encounter, Entry entry, @Nullable Instant acceptedAt) {
    return decide(encounter, (at, entries) -> timeline.get().take(at, entries, entry, acceptedAt));
  }

  public Outcome release(String encounter, Entry entry, @Nullable Instant acceptedAt) {
    return decide(
        encounter, (at, entries) -> timeline.get().release(at, entries, entry, acceptedAt));
  }

  public Outcome take(Encounter encounter, @Nullable Instant acceptedAt) {
    return decide(
        encounter.id(), (at, entries) -> timeline.get().take(at, entries, encounter, acceptedAt));
  }

  public Outcome take(CarePlan plan, @Nullable Instant acceptedAt) {
    return decide(
        plan.encounter(), (at, entries) -> timeline.get().take(at, entries, plan, acceptedAt));
  }

  /** Nothing is kept if deciding fails; the decision is pure and comes first. */
  private Outcome decide(String encounter, Decision decision) {
    var remembered = standings.find(encounter);
    if (remembered == null) {
      remembered = load(encounter);
    }
    var entries = entries(encounter, remembered.ids());
    var outcome = decision.make(remembered.standing(), entries);
    if (outcome.isNothing()) {
      standings.remember(remembered);
    } else {
      entries.keep(outcome);
      standings.remember(remembered.at(outcome.standing()));
    }
    return outcome;
  }

  private Remembered load(String encounter) {
    var entries = entries(encounter, KnownIds.some());
    var kept = entries.facts();
    long sequence = Math.max(kept.sequence(), entries.sequenceOfLast());
    var standing = timeline.get().resume(encounter, kept.facts(), sequence, entries);
    // Without a head there may still be retracted ones, which nothing but the store knows of.
    boolean none = standing.head().at() == null && entries.isEmpty();
    return new Remembered(standing, none ? KnownIds.none() : KnownIds.some());
  }

  private StoredEntries entries(String encounter, KnownIds ids) {
    return new StoredEntries(store, encounter, ids, entryCode, headCode);
  }
}
