package org.driftward.ingest.contract;

/** The side of the body a finding belongs to. */
public enum Side implements Word {
  LEFT,
  RIGHT
}
