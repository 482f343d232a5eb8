package org.driftward.alerts.deadline;

import jakarta.inject.Singleton;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.store.ShiftEnds;
import org.driftward.alerts.work.RepeatingPart;

/** Looks again and again whether a duty has ended, and that nobody off duty owns an episode. */
@Singleton
public class ShiftClock extends RepeatingPart {

  private final ShiftEnds ends;
  private final AlertsConfig config;

  public ShiftClock(ShiftEnds ends, AlertsConfig config) {
    super("shift-clock", config.longestBackOff());
    this.ends = ends;
    this.config = config;
  }

  @Override
  protected void round() throws InterruptedException {
    ends.look();
    Thread.sleep(config.look().toMillis());
  }
}
