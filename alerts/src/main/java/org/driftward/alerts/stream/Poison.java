package org.driftward.alerts.stream;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.alerts.store.Quarantine;
import org.jboss.logging.Logger;

/**
 * What becomes of a record that can never be taken: it is kept byte for byte in the quarantine with
 * the reason, counted, and told by its place in the log; the records after it go on. It is not
 * skipped before it has been kept.
 */
@Singleton
public class Poison {

  private static final Logger LOG = Logger.getLogger(Poison.class);

  private final Quarantine quarantine;
  private final Counter counter;

  public Poison(Quarantine quarantine, MeterRegistry registry) {
    this.quarantine = quarantine;
    this.counter =
        Counter.builder("driftward.alerts.quarantined")
            .description("Records of the stream that could not be taken and were kept apart")
            .register(registry);
  }

  void keep(ConsumerRecord<String, byte[]> poison, RuntimeException why) {
    quarantine.keep(
        poison.topic(),
        poison.partition(),
        poison.offset(),
        why.getClass().getSimpleName(),
        poison.value());
    counter.increment();
    LOG.errorf(
        "A record was put into quarantine: %s, partition %d, offset %d",
        poison.topic(), poison.partition(), poison.offset());
  }
}
