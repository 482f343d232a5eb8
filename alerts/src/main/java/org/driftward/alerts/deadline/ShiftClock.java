package org.driftward.alerts.deadline;

import jakarta.inject.Singleton;
import java.time.Duration;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.store.ShiftEnds;
import org.driftward.alerts.store.UnfitOwners;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/**
 * Looks again and again whether a duty has ended, and that nobody owns an episode who is off duty
 * or cannot answer for it any more.
 */
@Singleton
public class ShiftClock extends RepeatingPart implements RolePart {

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
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public Duration run() {
    unfit.look();
    ends.look();
    return config.look();
  }
}
