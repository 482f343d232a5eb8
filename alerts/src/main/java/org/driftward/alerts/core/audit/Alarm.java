package org.driftward.alerts.core.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Reason;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * Once that people were called about an episode: it was opened, it got worse, or its rest was over.
 * A climbed rung is the same alarm, told to more people.
 *
 * @param kind of the change that sounded it
 * @param at wall clock
 * @param reasons that held then
 * @param answered when a person first acknowledged it or came, or null
 * @param attended when a person first came to the bedside, or null
 * @param over when the episode was over, held or called again before anybody answered, or null
 */
record Alarm(
    String episode,
    String encounter,
    String ward,
    Level level,
    String kind,
    Instant at,
    List<Reason> reasons,
    @Nullable Instant answered,
    @Nullable Instant attended,
    @Nullable Instant over) {

  String trace() {
    return "episode/" + episode;
  }

  @Nullable Duration toAnswer() {
    return answered == null ? null : Duration.between(at, answered);
  }

  @Nullable Duration toAttend() {
    return attended == null ? null : Duration.between(at, attended);
  }

  /**
   * Whether it can be judged: it was done, or its time is over and it still stood then.
   *
   * @param done or null
   */
  boolean judged(@Nullable Instant done, Duration limit, Instant until) {
    if (done != null) {
      return true;
    }
    var due = at.plus(limit);
    return !due.isAfter(until) && (over == null || over.isAfter(due));
  }
}
