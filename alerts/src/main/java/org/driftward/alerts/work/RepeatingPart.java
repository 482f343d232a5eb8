package org.driftward.alerts.work;

import java.time.Duration;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/** A part of alerts that is one look or piece of work, done again and again. */
public abstract class RepeatingPart implements RolePart {

  private final String name;
  private final Repeating work;

  /**
   * @param longestPause between attempts that fail
   */
  protected RepeatingPart(String name, Duration longestPause) {
    this.name = name;
    this.work = new Repeating(name, longestPause, this::round);
  }

  /** Waits by itself where there is nothing to do. */
  protected abstract void round() throws InterruptedException;

  @Override
  public final Role role() {
    return Role.ALERTS;
  }

  @Override
  public final String name() {
    return name;
  }

  @Override
  public void start() {
    work.start();
  }

  @Override
  public final void stop() {
    work.stop();
  }

  @Override
  public final Condition condition() {
    return work.condition();
  }
}
