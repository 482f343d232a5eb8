package org.driftward.alerts.contract;

import java.util.Optional;

/**
 * Where somebody at the bedside says that they are worried: a trigger in its own right, which needs
 * no number. Durable when it returns. Thread-safe, blocking.
 */
public interface WorryDesk {

  /**
   * Opens an episode, or calls people again to the running one.
   *
   * @param note what worries them, in their words; may be blank
   * @param encounter a known one; the caller has asked the directory
   * @return the episode as it is now, or empty if the patient is no longer in the house
   */
  Optional<Episode> worry(String encounter, String note, Actor actor);
}
