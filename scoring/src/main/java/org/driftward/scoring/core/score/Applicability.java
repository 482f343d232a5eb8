package org.driftward.scoring.core.score;

import java.util.Collections;
import java.util.List;
import java.util.Set;

/**
 * Whom a score is meant for.
 *
 * @param ages completed years
 * @param unknownAge whether a patient whose age is not known is taken to be of the right age
 * @param required populations the patient must all belong to
 * @param excluded populations the patient must not belong to
 * @param notFor whom and what it must not be used for, in words, for people
 */
public record Applicability(
    Ages ages,
    boolean unknownAge,
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
    required = Set.copyOf(required);
    excluded = Set.copyOf(excluded);
    notFor = List.copyOf(notFor);
    if (!Collections.disjoint(required, excluded)) {
      throw new IllegalArgumentException("a population both required and excluded");
    }
  }

  public boolean covers(Subject subject) {
    var years = subject.ageYears();
    return (years == null ? unknownAge : ages.holds(years))
        && subject.populations().containsAll(required)
        && Collections.disjoint(subject.populations(), excluded);
  }
}
