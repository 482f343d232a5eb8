package org.driftward.ingest.mapping;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.arc.DefaultBean;
import jakarta.inject.Singleton;
import org.driftward.ingest.core.mapping.ForeignCode;
import org.driftward.ingest.core.mapping.UnmappedCodes;
import org.jspecify.annotations.Nullable;

/** Counts what is not mapped. The inputs themselves are kept by intake, with the reason. */
@Singleton
@DefaultBean
public final class CountedUnmappedCodes implements UnmappedCodes {

  private final Counter counter;

  public CountedUnmappedCodes(MeterRegistry registry) {
    this.counter =
        Counter.builder("driftward.codes.unmapped")
            .description("Observations whose code means no finding of the catalogue")
            .register(registry);
  }

  @Override
  public void seen(ForeignCode code, @Nullable String text, @Nullable String unit) {
    counter.increment();
  }
}
