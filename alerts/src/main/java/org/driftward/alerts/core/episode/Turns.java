package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.core.policy.Ladder;
import org.jspecify.annotations.Nullable;

/** Makes the circumstances of events, and what others see of an episode. */
record Turns(Ladder ladder) {

  private static final Owner NOBODY = new Owner(Happening.SERVICE, Happening.SERVICE);

  Turn of(Case running, @Nullable Owner by, Instant now) {
    return new Turn(now, by == null ? NOBODY : by, ladder.of(running.level()), running.alarmed());
  }

  /** Keeps a changed episode and tells the journal. */
  Decision changed(
      Course course,
      Case before,
      Case after,
      String kind,
      String by,
      @Nullable String note,
      @Nullable String reason) {
    var next = after.after(before);
    var episode = next.episode(course.encounter(), course.place(), ladder);
    return new Decision(
        course.withEpisode(next),
        List.of(new Happening.EpisodeChanged(kind, by, note, reason, episode)));
  }
}
