package org.driftward.scoring.core.timeline;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.change.Ahead;
import org.driftward.scoring.core.change.ChangeDetector;
import org.driftward.scoring.core.score.Thresholds;
import org.jspecify.annotations.Nullable;

/**
 * The totals of the leading score as a series of the patient's own, for the usual level and the
 * trend. An assessment counts if it brought at least one of the score's inputs: a note about a
 * wound does not repeat the last total.
 */
final class Totals {

  private final ChangeDetector detector;
  private final Weaver weaver;
  private final Thresholds thresholds;

  Totals(ChangeDetector detector, Weaver weaver, Thresholds thresholds) {
    this.detector = detector;
    this.weaver = weaver;
    this.thresholds = thresholds;
  }

  /**
   * @param scores the leading one with its usual level before this moment
   */
  record Counted(List<Score> scores, SortedMap<String, Strand> strands) {}

  Counted next(SortedMap<String, Strand> before, List<Score> scores, Entry entry) {
    if (scores.isEmpty()) {
      return new Counted(scores, before);
    }
    var leading = scores.get(0);
    var moment = entry.moment();
    var strand = before.get(leading.id());
    var usual =
        strand == null ? null : detector.recentLevel(strand.state(), moment.takenAt()).orElse(null);
    var levelled = usual == null ? scores : withUsual(scores, usual);
    boolean brought =
        leading.inputs().stream().anyMatch(input -> input.takenAt().equals(moment.takenAt()));
    if (!brought) {
      return new Counted(levelled, before);
    }
    var total = new Quantity(leading.low(), ChangeDetector.SCORE_UNIT);
    var reading =
        new Reading(FindingKey.of(leading.id()), total, moment.takenAt(), moment.assessment());
    var strands = new TreeMap<>(before);
    strands.put(leading.id(), weaver.longer(strand, reading, ahead(leading.id(), leading.low())));
    return new Counted(levelled, strands);
  }

  Strand revived(Strand bare) {
    if (!(bare.newest().value() instanceof Quantity total)) {
      throw new IllegalArgumentException("the total of a score is no quantity");
    }
    return weaver.strand(bare.newest(), bare.state(), ahead(bare.newest().code(), total.value()));
  }

  private Ahead ahead(String score, BigDecimal total) {
    return up -> thresholds.around(score, total).next(up);
  }

  private static List<Score> withUsual(List<Score> scores, @Nullable BigDecimal usual) {
    var levelled = new ArrayList<>(scores);
    levelled.set(0, scores.get(0).withUsual(usual));
    return levelled;
  }
}
