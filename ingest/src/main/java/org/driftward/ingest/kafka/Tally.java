package org.driftward.ingest.kafka;

import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Received;

/** Told of every assessment that is kept and every input that is refused, to count them. */
public interface Tally {

  void accepted(Source source);

  void refused(Received received);
}
