package org.driftward.scoring.rescore;

import java.util.List;
import java.util.SortedMap;

/**
 * What a re-scoring has found so far.
 *
 * @param records read from the log
 * @param unreadable records that scoring sets aside; they count for nothing
 * @param encounters scored again
 * @param moments compared: one for each assessment that counts
 * @param differing moments that are said otherwise
 * @param differences by kind: leading, score, drift, trend, changed, due
 * @param differingEncounters those with a difference
 * @param plansMissing encounters of which the log lacks an earlier care plan, so that moments under
 *     it cannot be judged as they were
 */
public record Counts(
    long records,
    long unreadable,
    long encounters,
    long moments,
    long differing,
    SortedMap<String, Long> differences,
    List<OfEncounter> differingEncounters,
    List<String> plansMissing) {

  /**
   * @param moments compared
   * @param differing of these
   */
  public record OfEncounter(String encounter, long moments, long differing) {}
}
