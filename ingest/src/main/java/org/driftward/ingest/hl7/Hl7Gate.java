package org.driftward.ingest.hl7;

import jakarta.inject.Singleton;
import java.util.List;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.Rule;

/** Messages of HL7 v2 that came in before. */
@Singleton
public class Hl7Gate implements Gate {

  private final Hl7Door door;

  Hl7Gate(Hl7Door door) {
    this.door = door;
  }

  @Override
  public Gate over(AssessmentIntake another, EncounterDirectory house) {
    return new Hl7Gate(door.over(another, house));
  }

  @Override
  public boolean serves(String target) {
    return Hl7Door.TARGET.equals(target);
  }

  /** A message may move a patient of any ward, so whoever brings it in must see every ward. */
  @Override
  public Passage pass(Received received, Bearer bearer) {
    return bearer.sight().all()
        ? passage(door.takeAgain(received))
        : Passage.refused(Rule.OTHER_WARD, "A message over MLLP may speak about any ward");
  }

  private static Passage passage(Verdict verdict) {
    if (verdict instanceof Verdict.Kept kept) {
      return new Passage(true, kept.warnings());
    }
    if (verdict instanceof Verdict.Refused refused) {
      return new Passage(false, refused.faults());
    }
    if (verdict instanceof Verdict.Rejected rejected) {
      return new Passage(false, List.of(rejected.fault()));
    }
    throw new UnavailableException(
        "Kafka does not answer", new IllegalStateException("nothing was promised"));
  }
}
