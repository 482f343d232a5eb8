package org.driftward.scoring.core.timeline;

/**
 * Where the timeline of an encounter stands: all that the next assessment needs if it is the
 * newest. Immutable; may be kept in memory between records, and can always be made again from the
 * history.
 *
 * @param sequence how many snapshots have been sent
 */
public record Standing(String encounter, Facts facts, Head head, long sequence) {

  @Override
  public String toString() {
    return "Standing[" + encounter + " sequence " + sequence + "]";
  }
}
