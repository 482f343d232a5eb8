package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * Changes the past: folds the history from the nearest earlier checkpoint twice, as it was and as
 * it is now, and says again what differs. Comparing two folds needs no copy of what was said
 * before, which would double the store. For one use by one thread.
 */
final class Rewrite {

  private final Fold.Settings settings;
  private final Standing standing;
  private final Entries entries;
  private final @Nullable Instant acceptedAt;

  Rewrite(
      Fold.Settings settings, Standing standing, Entries entries, @Nullable Instant acceptedAt) {
    this.settings = settings;
    this.standing = standing;
    this.entries = entries;
    this.acceptedAt = acceptedAt;
  }

  /**
   * Another revision of an assessment, a late first one, or, without {@code now}, none any more.
   */
  Outcome of(@Nullable Entry before, @Nullable Entry now) {
    var from = earliest(before, now);
    return rewritten(from, before, now, standing.facts());
  }

  /** Facts that may judge otherwise from a clinical time on. */
  Outcome of(Instant from, Facts facts) {
    return rewritten(new Moment(from, ""), null, null, facts);
  }

  private Outcome rewritten(Moment from, @Nullable Entry before, @Nullable Entry now, Facts facts) {
    var was = Fold.from(settings, standing.encounter(), standing.facts(), entries, from);
    var past = countingAfter(was.head());
    while (was.head().at() != null && replaced(past, before, now).isEmpty()) {
      // The newest picture is the one the checkpoint stands on; it has to be said again.
      was = Fold.from(settings, standing.encounter(), standing.facts(), entries, was.head().at());
      past = countingAfter(was.head());
    }
    var fold = new Fold(settings, standing.encounter(), facts, was.head());
    var said = said(past, from, was);
    var present = replaced(past, before, now);
    var drafts = new ArrayList<Snapshot>();
    Snapshot newest = null;
    boolean newestSaid = false;
    for (var entry : present) {
      newest = fold.next(entry);
      newestSaid = !entry.moment().isBefore(from) && !newest.equals(said.get(entry.id()));
      if (newestSaid) {
        drafts.add(newest);
      }
    }
    boolean valid = newest != null && !newest.withdrawn();
    if (valid && !newestSaid && !Objects.equals(fold.head().at(), standing.head().at())) {
      drafts.add(newest);
      newestSaid = true;
    }
    var gone = gone(before, now);
    if (gone != null) {
      drafts.add(0, fold.withdrawn(gone));
    }
    var snapshots = stamped(drafts, valid && newestSaid);
    return new Outcome(
        new Standing(
            standing.encounter(), facts, fold.head(), standing.sequence() + snapshots.size()),
        before,
        now,
        false,
        from,
        fold.checkpoints().stream().filter(head -> !head.isBefore(from)).toList(),
        snapshots,
        List.of());
  }

  private List<Snapshot> stamped(List<Snapshot> drafts, boolean lastIsLatest) {
    var snapshots = new ArrayList<Snapshot>(drafts.size());
    long sequence = standing.sequence();
    for (var draft : drafts) {
      boolean last = snapshots.size() == drafts.size() - 1;
      snapshots.add(draft.sent(++sequence, last && lastIsLatest, acceptedAt));
    }
    return snapshots;
  }

  /** What was said of every moment from {@code from} on, by assessment. */
  private static Map<String, Snapshot> said(List<Entry> past, Moment from, Fold fold) {
    var said = new HashMap<String, Snapshot>();
    for (var entry : past) {
      var snapshot = fold.next(entry);
      if (!entry.moment().isBefore(from)) {
        said.put(entry.id(), snapshot);
      }
    }
    return said;
  }

  private List<Entry> countingAfter(Head base) {
    var counting = new ArrayList<Entry>();
    entries
        .after(base.at())
        .forEachRemaining(
            entry -> {
              if (!entry.retracted()) {
                counting.add(entry);
              }
            });
    return counting;
  }

  private static List<Entry> replaced(
      List<Entry> past, @Nullable Entry before, @Nullable Entry now) {
    var present = new ArrayList<>(past);
    if (before != null) {
      present.removeIf(entry -> entry.id().equals(before.id()));
    }
    if (now != null && !now.retracted()) {
      present.add(now);
      present.sort(Comparator.comparing(Entry::moment));
    }
    return present;
  }

  /** The assessment that counted, or might have, and does not any more. */
  private static @Nullable Entry gone(@Nullable Entry before, @Nullable Entry now) {
    if (now == null) {
      return before;
    }
    boolean said = before != null && before.retracted() && before.moment().equals(now.moment());
    return now.retracted() && !said ? now : null;
  }

  private static Moment earliest(@Nullable Entry before, @Nullable Entry now) {
    if (before == null || now == null) {
      return Objects.requireNonNull(before == null ? now : before).moment();
    }
    return before.moment().isBefore(now.moment()) ? before.moment() : now.moment();
  }
}
