package org.driftward.ingest.core;

import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Fault;

/**
 * A whole request as far as it could be read.
 *
 * @param faults of the request as a whole; those of one assessment are in its draft
 */
public record Reading(List<Draft> drafts, List<Fault> faults) {

  public Reading {
    drafts = List.copyOf(drafts);
    faults = List.copyOf(faults);
  }

  /** What an adapter of another format hands in; pointers count in its list. */
  public static Reading of(List<Assessment> assessments) {
    var drafts = new ArrayList<Draft>();
    for (int i = 0; i < assessments.size(); i++) {
      drafts.add(Draft.of("/" + i, assessments.get(i)));
    }
    return new Reading(drafts, List.of());
  }

  /** One assessment by itself; pointers count in it. */
  public static Reading of(Assessment assessment) {
    return new Reading(List.of(Draft.of("", assessment)), List.of());
  }

  /** The assessments; only after {@link IntakeRules#check} found no fault. */
  public List<Assessment> assessments() {
    return drafts.stream().map(Draft::assessment).toList();
  }
}
