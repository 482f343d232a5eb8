package org.driftward.ingest.contract;

/** Priorities in the sense of IEC 60601-1-8, least first so that the order is the urgency. */
public enum Level implements Word {
  LOW,
  MEDIUM,
  HIGH
}
