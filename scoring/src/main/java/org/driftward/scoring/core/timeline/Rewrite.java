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

  private final Rules rules;
  private final Standing standing;
  private final Entries entries;
  private final @Nullable Instant acceptedAt;

  Rewrite(Rules rules, Standing standing, Entries entries, @Nullable Instant acceptedAt) {
    this.rules = rules;
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
    var base = entries.checkpoint(from).orElse(Head.EMPTY);
    var past = countingAfter(base);
    while (base.at() != null && survivors(past, before, now) == 0) {
      // The newest picture is the one the checkpoint stands on; it has to be said again.
      base = entries.checkpoint(base.at()).orElse(Head.EMPTY);
      past = countingAfter(base);
    }
    var present = replaced(past, before, now);

    var was = said(past, from, base, standing.facts());
    var fold = new Fold(rules, standing.encounter(), facts, base);
    var drafts = new ArrayList<Snapshot>();
    Snapshot newest = null;
    for (var entry : present) {
      newest = fold.next(entry);
      if (!entry.moment().isBefore(from) && !newest.equals(was.get(entry.id()))) {
        drafts.add(newest);
      }
    }
    boolean headMoved = !Objects.equals(fold.at(), standing.head().at());
    if (newest != null
        && !newest.withdrawn()
        && headMoved
        && (drafts.isEmpty() || last(drafts) != newest)) {
      drafts.add(newest);
    }
    var gone = gone(before, now);
    if (gone != null) {
      drafts.add(0, fold.withdrawn(gone));
    }
    return outcome(from, before, now, facts, fold, drafts, newest);
  }

  private Outcome outcome(
      Moment from,
      @Nullable Entry before,
      @Nullable Entry now,
      Facts facts,
      Fold fold,
      List<Snapshot> drafts,
      @Nullable Snapshot newest) {
    long sequence = standing.sequence();
    var snapshots = new ArrayList<Snapshot>(drafts.size());
    for (var draft : drafts) {
      boolean latest = draft == newest && !draft.withdrawn();
      snapshots.add(draft.sent(++sequence, latest, acceptedAt));
    }
    return new Outcome(
        new Standing(standing.encounter(), facts, fold.head(), sequence),
        before,
        now,
        false,
        from,
        fold.checkpoints().stream().filter(head -> !head.isBefore(from)).toList(),
        snapshots,
        List.of());
  }

  /** What was said of every moment from {@code from} on, by assessment. */
  private Map<String, Snapshot> said(List<Entry> past, Moment from, Head base, Facts facts) {
    var fold = new Fold(rules, standing.encounter(), facts, base);
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

  private static int survivors(List<Entry> past, @Nullable Entry before, @Nullable Entry now) {
    return replaced(past, before, now).size();
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

  private static Snapshot last(List<Snapshot> snapshots) {
    return snapshots.get(snapshots.size() - 1);
  }
}
