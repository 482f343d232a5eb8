package org.driftward.scoring.stream;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.core.timeline.Outcome;

/** What scoring counts. Thread-safe. Records of an aborted transaction are counted again. */
public final class ScoringMetrics {

  private final Counter scored;
  private final Counter sent;
  private final Counter rewritten;
  private final Counter setAside;

  public ScoringMetrics(MeterRegistry registry) {
    this.scored =
        counter(registry, "driftward.assessments.scored", "Assessments that scoring took in");
    this.sent = counter(registry, "driftward.snapshots.sent", "Snapshots that scoring sent");
    this.rewritten =
        counter(
            registry,
            "driftward.scoring.rewrites",
            "Late, corrected or retracted records that changed the past");
    this.setAside =
        counter(
            registry,
            "driftward.scoring.set.aside",
            "Records that could not be processed and were set aside with the reason");
  }

  private static Counter counter(MeterRegistry registry, String name, String description) {
    return Counter.builder(name).description(description).register(registry);
  }

  /** A record of {@code topic} was taken in. */
  void taken(String topic) {
    if (topic.equals(Topic.ASSESSMENTS.topic())) {
      scored.increment();
    }
  }

  void done(Outcome outcome) {
    sent.increment(outcome.snapshots().size());
    if (outcome.rewrittenFrom() != null) {
      rewritten.increment();
    }
  }

  void setAside() {
    setAside.increment();
  }
}
