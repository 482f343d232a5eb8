package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.jspecify.annotations.Nullable;

/**
 * One episode to be read back, running or over.
 *
 * @param times the moments that are measured: a label and the time, or that it did not come
 * @param reasons why it was opened and what came on top, in words, in the order in which they came
 * @param cares whether the person looks after patients, and so may read the call's record
 */
public record EpisodeScreen(
    Identity who,
    EpisodePanel panel,
    List<CallScreen.Line> times,
    List<String> reasons,
    boolean cares) {

  public static EpisodeScreen of(
      Identity who,
      Episode episode,
      List<EpisodeChange> story,
      List<Delivery> told,
      Reader reader,
      Instant now,
      ZoneId zone) {
    return new EpisodeScreen(
        who,
        EpisodePanel.of(episode, story, told, reader, now, zone),
        List.of(
            new CallScreen.Line("First trigger", Wording.time(episode.openedAt(), now, zone)),
            line("Answered", episode.acknowledgedAt(), now, zone),
            line("At the bedside", episode.attendedAt(), now, zone),
            line("Closed", episode.closedAt(), now, zone)),
        reasons(story),
        reader.cares());
  }

  /** Each rule once, as it was worded when it first held. */
  private static List<String> reasons(List<EpisodeChange> story) {
    var first = new LinkedHashMap<String, String>();
    story.stream()
        .flatMap(change -> change.episode().reasons().stream())
        .forEach(reason -> first.putIfAbsent(reason.rule(), reason.words()));
    return List.copyOf(first.values());
  }

  private static CallScreen.Line line(
      String label, @Nullable Instant at, Instant now, ZoneId zone) {
    return new CallScreen.Line(label, at == null ? "not so far" : Wording.time(at, now, zone));
  }

  /** Says nothing about the person. */
  @Override
  public String toString() {
    return "EpisodeScreen[" + panel.id() + "]";
  }
}
