package org.driftward.dashboard.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentCheck;
import org.driftward.ingest.contract.Derivations;
import org.driftward.ingest.contract.Fault;
import org.driftward.scoring.contract.Preview;
import org.driftward.scoring.contract.Preview.Known;
import org.driftward.scoring.contract.Preview.Outlook;

/**
 * What would be said of an assessment if it were sent now: by the rules of intake whether it would
 * be taken in, by the core of scoring what it would mean. Nothing is kept.
 *
 * <p>The history is the dashboard's own reading of the topics, since the state of scoring may live
 * in another process (decision 18).
 */
@ApplicationScoped
public class Previews {

  /** What would become of the draft. */
  public sealed interface Foresight {

    /**
     * @param whole whether the whole history of the stay was at hand
     */
    record Taken(Outlook outlook, Derivations.Result derivations, boolean whole)
        implements Foresight {}

    record Refused(List<Fault> faults) implements Foresight {
      public Refused {
        faults = List.copyOf(faults);
      }
    }
  }

  private final AssessmentCheck check;
  private final Preview preview;

  public Previews(AssessmentCheck check, Preview preview) {
    this.check = check;
    this.preview = preview;
  }

  public Foresight of(StayRecord record, Assessment draft) {
    var view = record.view();
    var faults = check.check(draft, view.encounter(), view.asOf());
    if (!faults.isEmpty()) {
      return new Foresight.Refused(faults);
    }
    var plan = view.carePlan();
    var known =
        new Known(
            view.encounter(),
            plan == null ? List.of() : List.of(plan),
            record.history().assessments());
    return new Foresight.Taken(
        preview.of(known, draft),
        Derivations.standard().from(draft.findings()),
        record.history().complete());
  }
}
