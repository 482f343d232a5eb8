package org.driftward.scoring.stream;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.kafka.KafkaStreamsMetrics;
import org.apache.kafka.streams.KafkaStreams;
import org.jspecify.annotations.Nullable;

/** Kafka's own meters of the running topology, and its lag as one number. */
final class StreamMeters {

  private final MeterRegistry registry;
  private volatile @Nullable KafkaStreams running;
  private @Nullable KafkaStreamsMetrics bound;

  StreamMeters(MeterRegistry registry) {
    this.registry = registry;
    Gauge.builder("driftward.scoring.lag", this, StreamMeters::lag)
        .description("Records that scoring has not read yet")
        .baseUnit("records")
        .register(registry);
  }

  void bind(KafkaStreams streams) {
    running = streams;
    bound = new KafkaStreamsMetrics(streams);
    bound.bindTo(registry);
  }

  void unbind() {
    running = null;
    if (bound != null) {
      bound.close();
      bound = null;
    }
  }

  private double lag() {
    var streams = running;
    if (streams == null) {
      return Double.NaN;
    }
    return streams.metrics().values().stream()
        .filter(metric -> metric.metricName().name().equals("records-lag"))
        .filter(metric -> metric.metricName().group().equals("consumer-fetch-manager-metrics"))
        .filter(metric -> !metric.metricName().tags().get("client-id").contains("restore"))
        .mapToDouble(metric -> ((Number) metric.metricValue()).doubleValue())
        .filter(lag -> lag > 0)
        .sum();
  }
}
