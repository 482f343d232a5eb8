package org.driftward.alerts.core.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.alerts.core.outreach.Notice;
import org.jspecify.annotations.Nullable;

/** Reads the alarms, and what became of each, out of the journal. */
final class AlarmList {

  private AlarmList() {}

  /**
   * @param changes whole episodes, in the order of the journal
   */
  static List<Alarm> of(List<EpisodeChange> changes) {
    var alarms = new ArrayList<Alarm>();
    byEpisode(changes).values().forEach(story -> read(story, alarms));
    return alarms;
  }

  static Map<String, List<EpisodeChange>> byEpisode(List<EpisodeChange> changes) {
    var stories = new LinkedHashMap<String, List<EpisodeChange>>();
    for (var change : changes) {
      stories.computeIfAbsent(change.episode().id(), id -> new ArrayList<>()).add(change);
    }
    return stories;
  }

  private static void read(List<EpisodeChange> story, List<Alarm> alarms) {
    for (int i = 0; i < story.size(); i++) {
      var change = story.get(i);
      // A climbed rung is the same alarm, told to more people.
      boolean sounds =
          Notice.calls(change.kind(), change.episode()) && !change.kind().equals("escalated");
      if (sounds) {
        alarms.add(alarm(change, story.subList(i + 1, story.size())));
      }
    }
  }

  private static Alarm alarm(EpisodeChange change, List<EpisodeChange> rest) {
    var episode = change.episode();
    @Nullable Instant answered = null;
    @Nullable Instant attended = null;
    @Nullable Instant over = null;
    for (var later : rest) {
      boolean byAPerson = !later.by().equals(Happening.SERVICE);
      boolean came = byAPerson && later.kind().equals("attended");
      if (answered == null && (came || (byAPerson && later.kind().equals("acknowledged")))) {
        answered = later.at();
      }
      if (attended == null && came) {
        attended = later.at();
      }
      if (over == null && (later.kind().equals("closed") || later.kind().equals("held"))) {
        over = later.at();
      }
    }
    return new Alarm(
        episode.id(),
        episode.encounter(),
        episode.ward(),
        episode.level(),
        change.kind(),
        change.at(),
        episode.reasons(),
        answered,
        attended,
        over);
  }
}
