package org.driftward.scoring.stream.state;

import org.driftward.scoring.core.timeline.Standing;

/**
 * What is remembered of one encounter.
 *
 * @param ids of all its assessments, also those that the head has left behind
 */
record Remembered(Standing standing, KnownIds ids) {

  /** After one more decision. */
  Remembered at(Standing now) {
    return new Remembered(now, ids);
  }
}
