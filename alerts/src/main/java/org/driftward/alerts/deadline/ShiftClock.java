package org.driftward.alerts.deadline;

import jakarta.inject.Singleton;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.store.ShiftEnds;
import org.driftward.alerts.store.UnfitOwners;
import org.driftward.alerts.work.RepeatingPart;

/**
 * Looks again and again whether a duty has ended, and that nobody owns an episode who is off duty
 * or cannot answer for it any more.
 */
@Singleton
public class ShiftClock extends RepeatingPart {

  private final ShiftEnds ends;
  private final UnfitOwners unfit;
  private final AlertsConfig config;

  public ShiftClock(ShiftEnds ends, UnfitOwners unfit, AlertsConfig config) {
    super("shift-clock", config.longestBackOff());
    this.ends = ends;
    this.unfit = unfit;
    this.config = config;
  }

  @Override
  protected void round() throws InterruptedException {
    unfit.look();
    ends.look();
    Thread.sleep(config.look().toMillis());
  }
}
