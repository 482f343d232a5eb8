package org.driftward.ingest.kafka;

import java.util.List;
import java.util.concurrent.CompletionStage;
import org.apache.kafka.clients.producer.ProducerRecord;

/** Where the records go that follow from what intake decided: straight to Kafka, or held back. */
@FunctionalInterface
public interface Outlet {

  /**
   * All records of one decision.
   *
   * @return completes when the outlet answers for all of them, or exceptionally with {@code
   *     AssessmentIntake.UnavailableException}
   */
  CompletionStage<Void> send(List<ProducerRecord<String, byte[]>> records);
}
