package org.driftward.ground.part;

import java.time.Duration;

/** A part that is one look or piece of work, done again and again by one thread. */
public abstract class RepeatingPart implements Part, Worker.Round {

  /** A rest in which nobody notices that nothing is done. */
  protected static final Duration A_MOMENT = Duration.ofSeconds(1);

  private final String name;
  private final Worker worker;

  protected RepeatingPart(String name) {
    this.name = name;
    this.worker = new Worker(name, this);
  }

  /**
   * @param longestPause between attempts that fail
   */
  protected RepeatingPart(String name, Duration longestPause) {
    this.name = name;
    this.worker = new Worker(name, longestPause, this);
  }

  /** There is something to do. */
  public final void ring() {
    worker.ring();
  }

  /** From within a round: what the condition is until the end of the next one. */
  protected final void say(Condition now) {
    worker.say(now);
  }

  protected final boolean stopping() {
    return worker.stopping();
  }

  @Override
  public final String name() {
    return name;
  }

  @Override
  public void start() {
    worker.start();
  }

  @Override
  public void stop() {
    worker.stop();
  }

  @Override
  public Condition condition() {
    return worker.condition();
  }
}
