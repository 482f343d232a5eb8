package org.driftward.alerts.core.episode;

import java.util.ArrayList;
import java.util.List;

/**
 * What follows from an event.
 *
 * @param course as it is afterwards
 * @param happenings what the journal must keep, in order
 */
public record Decision(Course course, List<Happening> happenings) {
  public Decision {
    happenings = List.copyOf(happenings);
  }

  static Decision silent(Course course) {
    return new Decision(course, List.of());
  }

  /** The other decision, with what happened here before it. */
  Decision then(Decision next) {
    var all = new ArrayList<>(happenings);
    all.addAll(next.happenings);
    return new Decision(next.course, all);
  }
}
