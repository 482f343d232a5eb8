package org.driftward.ingest.web;

import jakarta.inject.Singleton;
import jakarta.ws.rs.WebApplicationException;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.kafka.IntakeMetrics;

/** Guards the size of a body before anybody looks into it. */
@Singleton
public class BodyLimit {

  private final long limit;
  private final IntakeMetrics metrics;

  public BodyLimit(IngestConfig config, IntakeMetrics metrics) {
    this.limit = config.maxBody().asLongValue();
    this.metrics = metrics;
  }

  /**
   * @throws WebApplicationException 413 if the body is larger than this installation takes
   */
  public void check(byte[] body) {
    if (body.length > limit) {
      metrics.oversized(Source.BEDSIDE);
      throw new WebApplicationException(Problems.tooLarge(limit));
    }
  }
}
