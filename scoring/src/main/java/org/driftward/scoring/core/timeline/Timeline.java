package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Preview;
import org.jspecify.annotations.Nullable;

/**
 * Takes in what arrives about an encounter, in any order, and says what has changed. Stateless and
 * thread-safe.
 *
 * <p>The newest assessment moves the head one step, at a cost that does not depend on the length of
 * the entries. Anything else (late, corrected, retracted, an earlier fact) is left to {@link
 * Rewrite}.
 */
public final class Timeline {

  private static final int CHECKPOINT_EVERY = 64;

  private final Fold.Settings settings;

  public Timeline(Editions editions) {
    this(editions, CHECKPOINT_EVERY);
  }

  Timeline(Editions editions, int checkpointEvery) {
    this.settings = new Fold.Settings(editions, checkpointEvery);
  }

  public Editions editions() {
    return settings.editions();
  }

  /** The same with these editions instead. */
  public Timeline under(Editions editions) {
    return new Timeline(editions, settings.checkpointEvery());
  }

  /** Makes the standing of an encounter again from what was kept. */
  public Standing resume(String encounter, Facts facts, long sequence, Entries entries) {
    var fold = Fold.from(settings, encounter, facts, entries, null);
    entries.after(fold.head().at()).forEachRemaining(fold::next);
    return new Standing(encounter, facts, fold.head(), sequence);
  }

  /** The same from a head that was kept after its last entry. */
  public Standing resume(String encounter, Facts facts, long sequence, Head kept) {
    var head = Fold.from(settings, encounter, facts, kept).head();
    return new Standing(encounter, facts, head, sequence);
  }

  /**
   * Lets an encounter adopt every edition that it does not know yet. What was taken since their
   * time is judged again and said again.
   */
  public Outcome adopt(Standing standing, Entries entries) {
    var known = standing.facts().adopted();
    var all = settings.editions().versions();
    if (known.equals(all)) {
      return Outcome.nothing(standing);
    }
    var from = settings.editions().missingFrom(known);
    return changed(standing, entries, standing.facts().adopting(all), Optional.of(from), null);
  }

  /**
   * Takes in one assessment.
   *
   * @param acceptedAt when intake acknowledged it, for the snapshots it causes; or null
   */
  public Outcome take(
      Standing standing, Entries entries, Entry entry, @Nullable Instant acceptedAt) {
    var earlier = entries.find(entry.id()).orElse(null);
    if (earlier != null && !entry.supersedes(earlier)) {
      return Outcome.nothing(standing);
    }
    boolean newest = standing.head().isBefore(entry.moment());
    var outcome =
        earlier == null && newest && !entry.retracted()
            ? append(standing, entry, acceptedAt)
            : new Rewrite(settings, standing, entries, acceptedAt).of(earlier, entry);
    return passOn(outcome, standing, entry, true);
  }

  /** Takes an assessment back that had come from a merged encounter. */
  public Outcome release(
      Standing standing, Entries entries, Entry entry, @Nullable Instant acceptedAt) {
    var here = entries.find(entry.id()).orElse(null);
    if (here == null || here.movedFrom() == null || !here.movedFrom().equals(entry.movedFrom())) {
      return Outcome.nothing(standing);
    }
    var outcome = new Rewrite(settings, standing, entries, acceptedAt).of(here, null);
    return passOn(outcome, standing, here, false);
  }

  /** Takes in who the patient is and where. */
  public Outcome take(
      Standing standing, Entries entries, Encounter encounter, @Nullable Instant acceptedAt) {
    var facts = standing.facts().with(encounter);
    var outcome = learn(standing, entries, facts, acceptedAt);
    return moveAll(outcome, standing, entries);
  }

  /** Takes in a care plan. */
  public Outcome take(
      Standing standing, Entries entries, CarePlan plan, @Nullable Instant acceptedAt) {
    return learn(standing, entries, standing.facts().with(plan), acceptedAt);
  }

  /** What would be said of an assessment that has not arrived, by the same rules. */
  public Preview preview() {
    return new Rehearsal(settings);
  }

  private Outcome append(Standing standing, Entry entry, @Nullable Instant acceptedAt) {
    var fold = new Fold(settings, standing.encounter(), standing.facts(), standing.head());
    var draft = fold.next(entry);
    long sequence = standing.sequence() + 1;
    var snapshot = draft.sent(sequence, !draft.withdrawn(), acceptedAt);
    return new Outcome(
        new Standing(standing.encounter(), standing.facts(), fold.head(), sequence),
        null,
        entry,
        true,
        null,
        fold.checkpoints(),
        List.of(snapshot),
        List.of());
  }

  private Outcome learn(
      Standing standing, Entries entries, Facts facts, @Nullable Instant acceptedAt) {
    if (facts.equals(standing.facts())) {
      return Outcome.nothing(standing);
    }
    return changed(standing, entries, facts, facts.differFrom(standing.facts()), acceptedAt);
  }

  private Outcome changed(
      Standing standing,
      Entries entries,
      Facts facts,
      Optional<Instant> from,
      @Nullable Instant acceptedAt) {
    if (from.isPresent() && standing.head().reaches(from.get())) {
      return new Rewrite(settings, standing, entries, acceptedAt).of(from.get(), facts);
    }
    return new Outcome(
        new Standing(standing.encounter(), facts, standing.head(), standing.sequence()),
        null,
        null,
        false,
        null,
        List.of(),
        List.of(),
        List.of());
  }

  /** In a merged encounter whatever changes changes in the surviving one too. */
  private static Outcome passOn(Outcome outcome, Standing standing, Entry entry, boolean arrives) {
    var survivor = standing.facts().mergedInto();
    return survivor == null
        ? outcome
        : outcome.moving(List.of(move(standing.encounter(), survivor, entry, arrives)));
  }

  /** When an encounter is merged, or a merge is undone or mended, all its entries move. */
  private static Outcome moveAll(Outcome outcome, Standing before, Entries entries) {
    var from = before.facts().mergedInto();
    var to = outcome.standing().facts().mergedInto();
    if (Optional.ofNullable(from).equals(Optional.ofNullable(to))) {
      return outcome;
    }
    var moves = new ArrayList<Move>();
    entries
        .after(null)
        .forEachRemaining(
            entry -> {
              if (from != null) {
                moves.add(move(before.encounter(), from, entry, false));
              }
              if (to != null) {
                moves.add(move(before.encounter(), to, entry, true));
              }
            });
    return outcome.moving(moves);
  }

  private static Move move(String from, String to, Entry entry, boolean arrives) {
    return new Move(to, entry.from(from), arrives);
  }
}
