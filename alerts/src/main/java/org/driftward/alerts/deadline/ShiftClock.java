package org.driftward.alerts.deadline;

import jakarta.inject.Singleton;
import java.time.Duration;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.store.ShiftEnds;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/** Looks again and again whether a duty has ended, and that nobody off duty owns an episode. */
@Singleton
public class ShiftClock extends RepeatingPart implements RolePart {

  private final ShiftEnds ends;
  private final AlertsConfig config;

  public ShiftClock(ShiftEnds ends, AlertsConfig config) {
    super("shift-clock", config.longestBackOff());
    this.ends = ends;
    this.config = config;
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public Duration run() {
    ends.look();
    return config.look();
  }
}
