package org.driftward.dashboard.fhir;

import java.math.BigDecimal;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.PublishedId;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.IntegerType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Range;

/**
 * A score as an Observation. A complete one has one value, any other a range: what is missing is
 * never counted as normal. The points of each input are components, and the inputs that are missing
 * are components without a value.
 */
final class ScoreObservations {

  /** Every place where a score is read says so. */
  static final String CAUTION =
      "Decision support, not a certified medical device. Clinical judgement and local policy come"
          + " first.";

  private static final String POINTS = "{score}";
  private static final String ABSENT = "http://terminology.hl7.org/CodeSystem/data-absent-reason";

  private final Catalogue catalogue;

  ScoreObservations(Catalogue catalogue) {
    this.catalogue = catalogue;
  }

  Observation of(Assessment assessment, Snapshot snapshot, Score score) {
    var id = PublishedId.score(assessment.encounter(), assessment.id(), score.id());
    var observation = About.assessment(assessment, id, "survey");
    observation.setStatus(ObservationStatus.FINAL);
    observation.setEffective(About.moment(snapshot.asOf()));
    observation.setCode(code(score));
    if (score.complete()) {
      observation.setValue(points(score.low()));
    } else {
      observation.setValue(new Range().setLow(points(score.low())).setHigh(points(score.high())));
    }
    observation.addInterpretation(new CodeableConcept().setText(risk(score)));
    observation.addNote().setText(CAUTION);
    for (var input : score.inputs()) {
      var component = observation.addComponent();
      component.setCode(FindingObservations.code(input.code(), catalogue.find(input.code())));
      component.setValue(new IntegerType(input.points()));
      component.addInterpretation(new CodeableConcept().setText(input.band()));
    }
    for (var missing : score.missing()) {
      observation
          .addComponent()
          .setCode(FindingObservations.code(missing, catalogue.find(missing)))
          .setDataAbsentReason(About.concept(ABSENT, "unknown"));
    }
    return observation;
  }

  private static CodeableConcept code(Score score) {
    var concept = new CodeableConcept().setText(score.title());
    concept
        .addCoding()
        .setSystem(CodeSystem.SCORE)
        .setVersion(score.version())
        .setCode(score.id())
        .setDisplay(score.title());
    return concept;
  }

  private static String risk(Score score) {
    return score.risk().equals(score.riskIfWorst())
        ? score.risk()
        : score.risk() + " to " + score.riskIfWorst();
  }

  private static Quantity points(BigDecimal value) {
    return new Quantity()
        .setValue(value)
        .setUnit("points")
        .setSystem(CodeSystem.UCUM)
        .setCode(POINTS);
  }
}
