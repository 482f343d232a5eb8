package org.driftward.scoring.core.score;

import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Whom a score is meant for.
 *
 * @param ages completed years
 * @param unknownAge whether a patient whose age is not known is taken to be of the right age
 * @param atAnyAge populations whose members it is for whatever their age, if it is known
 * @param required populations the patient must all belong to
 * @param excluded populations the patient must not belong to
 * @param notFor whom and what it must not be used for, in words, for people
 */
public record Applicability(
    Ages ages,
    boolean unknownAge,
    Set<String> atAnyAge,
    Set<String> required,
    Set<String> excluded,
    List<String> notFor) {

  /** Completed years, both ends included. */
  public record Ages(int from, int upto) {
    public static final Ages ALL = new Ages(0, Integer.MAX_VALUE);

    public Ages {
      if (from < 0 || from > upto) {
        throw new IllegalArgumentException("ages from " + from + " to " + upto);
      }
    }

    public boolean holds(int years) {
      return from <= years && years <= upto;
    }
  }

  public Applicability {
    atAnyAge = Set.copyOf(atAnyAge);
    required = Set.copyOf(required);
    excluded = Set.copyOf(excluded);
    notFor = List.copyOf(notFor);
    if (!Collections.disjoint(required, excluded) || !Collections.disjoint(atAnyAge, excluded)) {
      throw new IllegalArgumentException("a population that is both asked for and excluded");
    }
  }

  public boolean covers(Subject subject) {
    var years = subject.ageYears();
    return (years == null ? unknownAge : ofAge(years, subject))
        && subject.populations().containsAll(required)
        && Collections.disjoint(subject.populations(), excluded);
  }

  private boolean ofAge(int years, Subject subject) {
    return ages.holds(years) || !Collections.disjoint(subject.populations(), atAnyAge);
  }

  /** Whether some patient of this age may be covered. */
  boolean mayCover(int years) {
    return ages.holds(years) || !atAnyAge.isEmpty();
  }

  /** Every population it speaks of. */
  Set<String> populations() {
    var all = new HashSet<>(required);
    all.addAll(excluded);
    all.addAll(atAnyAge);
    return all;
  }
}
