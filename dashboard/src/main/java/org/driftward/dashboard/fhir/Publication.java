package org.driftward.dashboard.fhir;

import java.util.ArrayList;
import java.util.List;
import org.driftward.dashboard.core.Moment;
import org.driftward.ingest.contract.Catalogue;
import org.hl7.fhir.r4.model.Observation;

/**
 * What is published of one assessment: its findings, then its scores, in a fixed order. Findings of
 * a retracted one stay readable, as entered in error; scores never rest on it. Thread-safe.
 */
final class Publication {

  private final FindingObservations findings;
  private final ScoreObservations scores;

  Publication(Catalogue catalogue) {
    this.findings = new FindingObservations(catalogue);
    this.scores = new ScoreObservations(catalogue);
  }

  List<Observation> of(Moment moment) {
    var observations = new ArrayList<>(findings.of(moment.assessment()));
    var snapshot = moment.snapshot();
    if (snapshot != null) {
      snapshot
          .scores()
          .forEach(score -> observations.add(scores.of(moment.assessment(), snapshot, score)));
    }
    return observations;
  }
}
