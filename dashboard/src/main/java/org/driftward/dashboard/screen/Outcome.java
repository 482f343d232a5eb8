package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk.Action;

/**
 * What became of an action, told to the person in place.
 *
 * @param done whether anything was changed
 */
public record Outcome(boolean done, String words) {

  public static Outcome done(Action action, Episode now, Instant time, ZoneId zone) {
    String what =
        switch (action) {
          case ACKNOWLEDGE -> "You own this now. Somebody is expected at the bedside%s.";
          case ATTEND -> "Recorded: you are at the bedside. The next set is expected%s.";
          case HAND_OVER -> "Handed over to " + owner(now) + "%s.";
          case HOLD -> "On hold %s. Then the clock runs again.";
          case ESCALATE ->
              "Escalated. To be told next: " + now.audience() + ". An answer is expected%s.";
          case CLOSE -> "Closed. The next trigger opens a new one.";
        };
    return new Outcome(true, what.formatted(end(action, now, time, zone)));
  }

  private static String end(Action action, Episode now, Instant time, ZoneId zone) {
    if (now.due() == null) {
      return "";
    }
    String until = Wording.time(now.due(), time, zone);
    return action == Action.HOLD ? "until " + until : " by " + until;
  }

  /** Somebody was faster, or the action never applied. */
  public static Outcome tooLate(Episode now, String why) {
    String owner = now.owner() == null ? "" : " Responsible now: " + owner(now) + ".";
    return new Outcome(
        false,
        "Nothing was changed: %s. It stands at \"%s\".%s"
            .formatted(why, Wording.sentence(now.state().word()), owner));
  }

  public static Outcome incomplete(String why) {
    return new Outcome(false, "Nothing was changed: " + why + ".");
  }

  /** Something that is no action on an episode was recorded. */
  public static Outcome done(String words) {
    return new Outcome(true, words);
  }

  private static String owner(Episode now) {
    return now.ownerName() == null ? String.valueOf(now.owner()) : now.ownerName();
  }
}
