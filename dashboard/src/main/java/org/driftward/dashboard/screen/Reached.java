package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Told;

/**
 * Whom the present alarm has reached, in words that claim no more than was delivered.
 *
 * @param words empty where somebody has answered whom no message reached
 * @param nobody whether nobody has been reached and nothing is on its way
 */
public record Reached(String words, boolean nobody) {

  /**
   * @param present deliveries of the present alarm
   */
  public static Reached of(Episode episode, List<Delivery> present, Instant now, ZoneId zone) {
    var told = Told.among(present);
    if (!told.isEmpty()) {
      return new Reached(
          told.stream().map(one -> words(one, now, zone)).collect(Collectors.joining("; ")), false);
    }
    if (episode.state() != EpisodeState.OPEN) {
      return new Reached("", false);
    }
    var onTheWay =
        present.stream()
            .filter(one -> one.next() != null)
            .map(one -> one.recipient() + " by " + one.channel().word())
            .toList();
    return onTheWay.isEmpty()
        ? new Reached("shown here only: telephone " + episode.audience(), true)
        : new Reached("to be told next: " + String.join(", ", onTheWay), false);
  }

  private static String words(Told one, Instant now, ZoneId zone) {
    var time = Wording.time(one.at(), now, zone);
    return one.channel() == Channel.TONE
        ? "sounded at the " + one.person() + " " + time
        : "told: " + one.person() + " by " + one.channel().word() + " " + time;
  }
}
