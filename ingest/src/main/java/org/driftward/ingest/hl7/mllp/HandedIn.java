package org.driftward.ingest.hl7.mllp;

import jakarta.inject.Singleton;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.hl7.Hl7Door;
import org.driftward.ingest.kafka.IntakeMetrics;

/** Hands the messages of every connection in at the door for HL7 v2. Thread-safe. */
@Singleton
public final class HandedIn implements MessageHandler {

  private final Hl7Door door;
  private final IntakeMetrics intakeMetrics;
  private final MllpMetrics metrics;

  public HandedIn(Hl7Door door, IntakeMetrics intakeMetrics, MllpMetrics metrics) {
    this.door = door;
    this.intakeMetrics = intakeMetrics;
    this.metrics = metrics;
  }

  @Override
  public byte[] take(byte[] message) {
    return door.take(message);
  }

  @Override
  public byte[] tooLarge(byte[] beginning, long length) {
    intakeMetrics.oversized(Source.HL7);
    return door.tooLarge(beginning, length);
  }

  @Override
  public void broken(byte[] part) {
    metrics.broken();
    door.keepBroken(part, "the message broke off before its end");
  }
}
