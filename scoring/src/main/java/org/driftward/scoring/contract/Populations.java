package org.driftward.scoring.contract;

import java.util.Collections;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The groups of patients that some score definition in force is for, or not for, besides their age.
 * A care plan may put a patient in these only.
 *
 * @param names in alphabetical order
 */
public record Populations(SortedSet<String> names) {

  public Populations {
    names = Collections.unmodifiableSortedSet(new TreeSet<>(names));
  }

  public boolean known(String name) {
    return names.contains(name);
  }
}
