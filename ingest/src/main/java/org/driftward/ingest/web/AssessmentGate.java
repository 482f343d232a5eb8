package org.driftward.ingest.web;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CompletionStage;
import java.util.function.Function;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.AssessmentReader.Defaults;
import org.driftward.ingest.core.Draft;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.Reading;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.json.JsonTree;
import org.driftward.ingest.json.JsonTree.NotJsonException;

/** Assessments as JSON. */
@Singleton
public class AssessmentGate implements Gate {

  public static final String TARGET = "POST /api/assessments";

  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final AssessmentReader reader;
  private final IntakeRules rules;
  private final Clock clock;

  public AssessmentGate(
      AssessmentIntake intake,
      EncounterDirectory directory,
      AssessmentReader reader,
      IntakeRules rules,
      Clock clock) {
    this.intake = intake;
    this.directory = directory;
    this.reader = reader;
    this.rules = rules;
    this.clock = clock;
  }

  @Override
  public Gate over(AssessmentIntake another, EncounterDirectory house) {
    return new AssessmentGate(another, house, reader, rules, clock);
  }

  @Override
  public boolean serves(String target) {
    return target.equals(TARGET);
  }

  @Override
  public Passage pass(Received received, Bearer bearer) {
    try {
      return Passage.of(bring(received, bearer));
    } catch (OtherWardException e) {
      return Passage.refused(Rule.OTHER_WARD, OtherWardException.DETAIL);
    }
  }

  /**
   * @throws OtherWardException before any fault is told: a fault, too, may tell something about a
   *     patient
   */
  CompletionStage<Outcome> bring(Received received, Bearer bearer) {
    var now = clock.instant();
    Reading reading;
    try {
      reading = reader.read(JsonTree.parse(received.bytes()), new Defaults(now, bearer.account()));
    } catch (NotJsonException e) {
      var fault = new Fault("", Rule.MALFORMED_JSON.word(), String.valueOf(e.getMessage()));
      return intake.refuse(received, List.of(fault));
    }
    var known = directory.forOneRequest();
    checkWards(reading, known, bearer.sight());
    var faults = rules.check(reading, known, now);
    return faults.isEmpty()
        ? intake.accept(received, reading.assessments())
        : intake.refuse(received, faults);
  }

  private static void checkWards(
      Reading reading, Function<String, Optional<Encounter>> known, WardScope sight) {
    boolean allSeen =
        reading.drafts().stream()
            .map(Draft::encounter)
            .filter(Objects::nonNull)
            .flatMap(encounter -> known.apply(encounter).stream())
            .allMatch(encounter -> sight.sees(encounter.ward()));
    if (!allSeen) {
      throw new OtherWardException();
    }
  }
}
