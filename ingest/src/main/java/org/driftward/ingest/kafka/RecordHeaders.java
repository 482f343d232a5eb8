package org.driftward.ingest.kafka;

/** What a record says about itself beside its value. */
public final class RecordHeaders {

  /** Epoch milliseconds as text: when intake accepted the record, for measuring latency. */
  public static final String ACCEPTED_AT = "accepted-at";

  /** Who sent it, in UTF-8, as {@code Received.origin()} has it. Names no patient. */
  public static final String ORIGIN = "origin";

  private RecordHeaders() {}
}
