package org.driftward.scoring.core.timeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import org.driftward.ingest.contract.Assessment;
import org.driftward.scoring.contract.Preview;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * Plays a history once without a draft and once with it. Both begin at the first assessment: the
 * history comes from a reader of the topics, who has no checkpoints of ours.
 */
final class Rehearsal implements Preview {

  private final Fold.Settings settings;

  Rehearsal(Fold.Settings settings) {
    this.settings = settings;
  }

  @Override
  public Outlook of(Known known, Assessment draft) {
    if (draft.retracted()) {
      throw new IllegalArgumentException("there is nothing to foresee of a retraction");
    }
    var facts = facts(known);
    var moments = new TreeMap<Moment, Entry>();
    known.assessments().stream()
        .filter(one -> !one.retracted())
        .map(Entry::of)
        .forEach(entry -> moments.put(entry.moment(), entry));
    var before = last(said(known, facts, moments));
    moments.values().removeIf(entry -> entry.id().equals(draft.id()));
    var entry = Entry.of(draft);
    moments.put(entry.moment(), entry);
    var after = said(known, facts, moments);
    var newest = Objects.requireNonNull(last(after));
    int place = moments.headMap(entry.moment()).size();
    boolean late = place < after.size() - 1;
    return new Outlook(
        late ? after.get(place) : latest(newest),
        latest(newest),
        before == null ? null : latest(before));
  }

  private static Facts facts(Known known) {
    var facts = Facts.NONE.with(known.encounter());
    for (var plan : known.plans()) {
      facts = facts.with(plan);
    }
    return facts;
  }

  /** One snapshot for each moment, oldest first. */
  private List<Snapshot> said(Known known, Facts facts, SortedMap<Moment, Entry> moments) {
    var fold = new Fold(settings, known.encounter().id(), facts, Head.EMPTY);
    var said = new ArrayList<Snapshot>(moments.size());
    moments.values().forEach(entry -> said.add(fold.next(entry)));
    return said;
  }

  private static @Nullable Snapshot last(List<Snapshot> said) {
    return said.isEmpty() ? null : said.get(said.size() - 1);
  }

  private static Snapshot latest(Snapshot snapshot) {
    return snapshot.withdrawn() ? snapshot : snapshot.sent(0, true, null);
  }
}
