package org.driftward.ingest.hl7;

import java.util.List;
import org.driftward.ingest.contract.Fault;

/** What became of a message. */
sealed interface Verdict {

  /** AA: kept. The warnings name what nobody has mapped yet. */
  record Kept(List<Fault> warnings) implements Verdict {
    public Kept {
      warnings = List.copyOf(warnings);
    }
  }

  /** AE: the content is refused; the same message will be refused again. */
  record Refused(List<Fault> faults) implements Verdict {
    public Refused {
      faults = List.copyOf(faults);
    }
  }

  /** AR: not for us, or not to be read at all. */
  record Rejected(ErrorCode code, Fault fault) implements Verdict {}

  /** AE with 207: nothing was promised; the same message should come again. */
  record Unavailable() implements Verdict {}
}
