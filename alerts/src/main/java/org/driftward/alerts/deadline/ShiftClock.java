package org.driftward.alerts.deadline;

import jakarta.inject.Singleton;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.store.ShiftEnds;
import org.driftward.alerts.work.Repeating;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/** Looks again and again whether a duty has ended, and that nobody off duty owns an episode. */
@Singleton
public class ShiftClock implements RolePart {

  private final ShiftEnds ends;
  private final AlertsConfig config;
  private final Repeating work;

  public ShiftClock(ShiftEnds ends, AlertsConfig config) {
    this.ends = ends;
    this.config = config;
    this.work = new Repeating(name(), config.longestBackOff(), this::look);
  }

  private void look() throws InterruptedException {
    ends.look();
    Thread.sleep(config.look().toMillis());
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public String name() {
    return "shift-clock";
  }

  @Override
  public void start() {
    work.start();
  }

  @Override
  public void stop() {
    work.stop();
  }

  @Override
  public Condition condition() {
    return work.condition();
  }
}
