package org.driftward.ingest.work;

import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/** A part of intake that is one piece of work, done again and again. */
public abstract class RepeatingPart implements RolePart {

  private final String name;
  private final Repeating work;

  protected RepeatingPart(String name) {
    this.name = name;
    this.work = new Repeating(name, this::round);
  }

  /**
   * @return false if there was nothing to do
   */
  protected abstract boolean round();

  /** There is something to do. */
  public final void ring() {
    work.ring();
  }

  @Override
  public final Role role() {
    return Role.INGEST;
  }

  @Override
  public final String name() {
    return name;
  }

  @Override
  public final void start() {
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
