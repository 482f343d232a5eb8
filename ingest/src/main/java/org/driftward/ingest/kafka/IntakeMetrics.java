package org.driftward.ingest.kafka;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import jakarta.inject.Singleton;
import java.util.EnumMap;
import java.util.Map;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Received;

/** What intake counts. Thread-safe. */
@Singleton
public class IntakeMetrics implements Tally {

  private final Map<Source, Counter> accepted = new EnumMap<>(Source.class);
  private final Map<Source, Counter> refused = new EnumMap<>(Source.class);
  private final Map<Source, Counter> oversized = new EnumMap<>(Source.class);
  private final Counter unmapped;
  private final Counter moved;
  private final Counter unavailable;
  private final Timer acknowledgement;

  public IntakeMetrics(MeterRegistry registry) {
    for (var source : Source.values()) {
      accepted.put(
          source,
          counter(registry, "assessments.accepted", "Assessments that Kafka acknowledged", source));
      refused.put(
          source,
          counter(registry, "assessments.refused", "Inputs refused and kept with reasons", source));
      oversized.put(
          source, counter(registry, "intake.oversized", "Requests larger than the limit", source));
    }
    this.unmapped =
        Counter.builder("driftward.codes.unmapped")
            .description("Codes in refused inputs that mean no finding of the catalogue")
            .register(registry);
    this.moved =
        Counter.builder("driftward.encounters.changed")
            .description("Changes of encounters that Kafka acknowledged")
            .register(registry);
    this.unavailable =
        Counter.builder("driftward.intake.unavailable")
            .description("Requests answered with a plea to repeat, because Kafka did not answer")
            .register(registry);
    this.acknowledgement =
        Timer.builder("driftward.intake.acknowledgement")
            .description("Time that Kafka took to acknowledge a request")
            .publishPercentileHistogram()
            .register(registry);
  }

  private static Counter counter(
      MeterRegistry registry, String name, String description, Source source) {
    return Counter.builder("driftward." + name)
        .description(description)
        .tag("source", source.word())
        .register(registry);
  }

  @Override
  public void accepted(Source source) {
    accepted.get(source).increment();
  }

  @Override
  public void refused(Received received) {
    refused.get(received.source()).increment();
    unmapped.increment(received.unmapped().size());
  }

  void moved() {
    moved.increment();
  }

  void unavailable() {
    unavailable.increment();
  }

  Timer acknowledgement() {
    return acknowledgement;
  }

  /** A request whose body is larger than the limit was turned away unread. */
  public void oversized(Source source) {
    oversized.get(source).increment();
  }
}
