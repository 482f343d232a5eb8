package org.driftward.ingest.contract;

/** What a process of the one image may play. */
public enum Role implements Word {
  INGEST,
  SCORING,
  ALERTS,
  DASHBOARD
}
