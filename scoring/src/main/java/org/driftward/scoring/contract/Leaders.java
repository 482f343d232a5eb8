package org.driftward.scoring.contract;

import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The scores in force that lead for some patient. Whoever acts on scores must have an answer for
 * each of them.
 *
 * @param scores ids, in alphabetical order
 */
public record Leaders(SortedSet<String> scores) {
  public Leaders {
    scores = Collections.unmodifiableSortedSet(new TreeSet<>(scores));
  }
}
