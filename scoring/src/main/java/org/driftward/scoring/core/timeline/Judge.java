package org.driftward.scoring.core.timeline;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.Period;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.Picture;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.change.ChangeDetector;
import org.driftward.scoring.core.change.SeriesState;
import org.driftward.scoring.core.plan.ObservationPlan;
import org.driftward.scoring.core.policy.Restart;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.score.ScoreBook;
import org.driftward.scoring.core.score.Subject;
import org.jspecify.annotations.Nullable;

/**
 * What one policy and one set of score definitions make of a moment, given everything before it.
 * Stateless and thread-safe.
 */
public final class Judge {

  private final ScoreBook book;
  private final ScoringPolicy policy;
  private final ChangeDetector detector;
  private final ObservationPlan plan;

  public Judge(Catalogue catalogue, ScoreBook book, ScoringPolicy policy) {
    this.book = Objects.requireNonNull(book, "book");
    this.policy = Objects.requireNonNull(policy, "policy");
    this.detector = new ChangeDetector(catalogue, policy);
    this.plan = new ObservationPlan(policy.observations());
  }

  /**
   * @param snapshot not yet stamped for sending
   */
  record Step(Head head, Snapshot snapshot) {}

  /**
   * Takes in the next assessment.
   *
   * @param before the head of everything before it
   */
  Step step(String encounter, Head before, Entry entry, Facts facts) {
    var asOf = entry.moment().takenAt();
    var carePlan = facts.planAt(asOf).orElse(null);
    var strands = restarted(before, facts, asOf);
    take(entry, strands);

    var picture = new Picture(asOf, newest(strands));
    var scores = book.score(picture, subject(facts, carePlan, asOf), policy::validity);
    var totals = new TreeMap<>(before.totals());
    scores = withLevel(scores, entry, totals);

    var set = plan.setIn(codes(entry), asOf).orElse(before.newestSet());
    var next = set == null ? null : plan.next(set, scores, asOf, carePlan);
    var shown = new ArrayList<Strand>(strands.size() + 1);
    if (!scores.isEmpty() && totals.containsKey(scores.get(0).id())) {
      shown.add(totals.get(scores.get(0).id()));
    }
    strands.values().stream().filter(strand -> serves(strand, asOf)).forEach(shown::add);
    var snapshot =
        new Snapshot(
            encounter,
            asOf,
            entry.id(),
            0,
            false,
            false,
            policy.version(),
            carePlan == null ? 0 : carePlan.version(),
            scores,
            present(shown, Strand::drift),
            present(shown, Strand::trend),
            present(shown, Strand::changed),
            set == null ? null : set.takenAt(),
            set == null ? List.of() : set.partial(),
            next == null ? null : next.due(),
            next == null ? null : next.interval(),
            next == null ? null : next.why(),
            null);
    return new Step(
        new Head(entry.moment(), before.sets() + 1, strands, totals, set), snapshot);
  }

  /** What is said of an assessment that counts no more. */
  Snapshot withdrawn(String encounter, Entry entry) {
    return new Snapshot(
        encounter,
        entry.moment().takenAt(),
        entry.id(),
        0,
        false,
        true,
        policy.version(),
        0,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        List.of(),
        null,
        null,
        null,
        null);
  }
}
