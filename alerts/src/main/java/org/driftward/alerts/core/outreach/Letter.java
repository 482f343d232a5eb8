package org.driftward.alerts.core.outreach;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.Reason;
import org.driftward.alerts.core.policy.Detail;
import org.jspecify.annotations.Nullable;

/** An alarm as plain text: who, where, why, since when, and what was done. */
public record Letter(String subject, String text) {

  private static final String CAUTION =
      "Decision support, not a certified medical device. Clinical judgement and local policy come"
          + " first.\nThat this message arrived does not mean that anybody is on the way: answer on"
          + " the board, or by telephone.";

  /**
   * @param address of the pages, or null if messages carry no link
   */
  public static Letter of(Parcel parcel, Detail detail, ZoneId zone, @Nullable String address) {
    var episode = parcel.alarm().episode();
    var place = "ward " + episode.ward() + (episode.bed() == null ? "" : ", bed " + episode.bed());
    var priority = episode.level().word().toUpperCase(Locale.ROOT);
    var time = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm z", Locale.ROOT).withZone(zone);
    var text = new StringBuilder();
    text.append(priority).append(" priority: somebody is needed at ").append(place).append(".\n\n");
    line(text, "To", parcel.recipient() + " (" + episode.audience() + ")");
    line(text, "Since", time.format(episode.openedAt()));
    line(text, "Answer by", answerBy(episode.due(), time));
    line(text, "Call", "number " + (episode.rung() + 1) + " on the ladder");
    if (detail == Detail.FULL) {
      line(text, "Stay", episode.encounter() + ", " + episode.id());
      text.append("\nWhy\n");
      episode.reasons().forEach(reason -> text.append(why(reason, time)));
      text.append("\nWhat was done\n");
      done(parcel.story(), time).forEach(text::append);
    }
    if (address != null) {
      text.append('\n').append(address).append(page(episode, detail)).append('\n');
    }
    text.append('\n').append(CAUTION).append('\n');
    return new Letter(priority + " priority, " + place, text.toString());
  }

  private static String page(Episode episode, Detail detail) {
    return detail == Detail.FULL ? "/encounters/" + episode.encounter() : "/response";
  }

  private static void line(StringBuilder text, String name, String value) {
    text.append(name).append(": ").append(value).append('\n');
  }

  private static String answerBy(@Nullable Instant due, DateTimeFormatter time) {
    return due == null ? "at once" : time.format(due);
  }

  private static String why(Reason reason, DateTimeFormatter time) {
    return "- %s (%s, since %s)\n"
        .formatted(reason.words(), reason.level().word(), time.format(reason.since()));
  }

  private static List<String> done(List<EpisodeChange> story, DateTimeFormatter time) {
    return story.stream()
        .map(
            change ->
                "- %s %s by %s\n"
                    .formatted(
                        time.format(change.at()), change.kind().replace('-', ' '), change.by()))
        .toList();
  }
}
