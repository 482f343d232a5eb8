package org.driftward.ingest.web;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.CompletionStage;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.EncounterReader;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.json.JsonTree;
import org.driftward.ingest.json.JsonTree.NotJsonException;

/** The state of an encounter as JSON. */
@Singleton
public class EncounterGate implements Gate {

  private static final String TARGET = "PUT /api/encounters/";

  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final EncounterReader reader;
  private final Clock clock;

  public EncounterGate(
      AssessmentIntake intake, EncounterDirectory directory, EncounterReader reader, Clock clock) {
    this.intake = intake;
    this.directory = directory;
    this.reader = reader;
    this.clock = clock;
  }

  public static String target(String encounter) {
    return TARGET + encounter;
  }

  @Override
  public Gate over(AssessmentIntake another, EncounterDirectory house) {
    return new EncounterGate(another, house, reader, clock);
  }

  @Override
  public boolean serves(String target) {
    return target.startsWith(TARGET);
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
   * Who moves a patient must see where the patient is, so that nobody pulls a patient into sight;
   * who admits one must see the ward.
   *
   * @throws OtherWardException if the sender does not
   */
  CompletionStage<Outcome> bring(Received received, Bearer bearer) {
    var id = received.target().substring(TARGET.length());
    EncounterReader.Result result;
    try {
      result = reader.read(id, JsonTree.parse(received.bytes()), clock.instant());
    } catch (NotJsonException e) {
      var fault = new Fault("", Rule.MALFORMED_JSON.word(), String.valueOf(e.getMessage()));
      return intake.refuse(received, List.of(fault));
    }
    var put = result.put();
    if (put == null) {
      return intake.refuse(received, result.faults());
    }
    var ward = directory.find(id).map(Encounter::ward).orElse(put.ward());
    if (!bearer.sight().sees(ward)) {
      throw new OtherWardException();
    }
    return intake.change(received, put);
  }
}
