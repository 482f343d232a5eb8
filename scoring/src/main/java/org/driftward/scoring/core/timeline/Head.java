package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.plan.VitalSet;
import org.jspecify.annotations.Nullable;

/**
 * Everything the past of an encounter means for its next moment: the history up to {@code at},
 * folded. Its size depends on how many series there are, not on how long they are. Immutable.
 *
 * @param at the last moment folded in, or null before the first
 * @param sets how many assessments were folded in
 * @param strands by series, those computed from others among them
 * @param totals the totals of leading scores, each as a series under the score's id
 * @param sums recent readings of the findings that a score adds up over hours, by code
 * @param newestSet the newest set of vital signs, or null before the first
 */
public record Head(
    @Nullable Moment at,
    long sets,
    SortedMap<FindingKey, Strand> strands,
    SortedMap<String, Strand> totals,
    SortedMap<String, List<Reading>> sums,
    @Nullable VitalSet newestSet) {

  /** Of an encounter without assessments. */
  public static final Head EMPTY =
      new Head(null, 0, new TreeMap<>(), new TreeMap<>(), new TreeMap<>(), null);

  public Head {
    strands = Collections.unmodifiableSortedMap(strands);
    totals = Collections.unmodifiableSortedMap(totals);
    sums = Collections.unmodifiableSortedMap(sums);
  }

  boolean isBefore(Moment moment) {
    return at == null || at.isBefore(moment);
  }

  /** Whether something that takes effect at {@code time} may concern a moment folded in. */
  boolean reaches(Instant time) {
    return at != null && !at.takenAt().isBefore(time);
  }

  @Override
  public String toString() {
    return "Head[after " + sets + " assessments]";
  }
}
