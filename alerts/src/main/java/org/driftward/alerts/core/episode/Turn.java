package org.driftward.alerts.core.episode;

import java.time.Instant;
import org.driftward.alerts.core.policy.Response;

/**
 * The circumstances of an event.
 *
 * @param now wall clock
 * @param by who acts; for the clock and for pictures whoever owned the episode so far, or nobody
 * @param response what the episode's level asks for
 * @param alarmed when the present alarm went out, wall clock
 */
record Turn(Instant now, Owner by, Response response, Instant alarmed) {

  Instant acknowledgeBy(int rung) {
    return now.plus(response.rung(rung).acknowledge());
  }

  /**
   * Counted from the alarm and not from the answer, but whoever answers late still has as long as
   * the rung gives for an answer.
   */
  Instant attendBy(int rung) {
    var fromAlarm = alarmed.plus(response.attend());
    var atLeast = acknowledgeBy(rung);
    return fromAlarm.isAfter(atLeast) ? fromAlarm : atLeast;
  }

  Instant reassessBy() {
    return now.plus(response.reassess());
  }
}
