package org.driftward.ground.part;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.driftward.ground.failure.Failures;
import org.driftward.ground.part.Part.Condition;
import org.jspecify.annotations.Nullable;

/**
 * One thread that does the same again and again. Any failure whatever is told in the condition and
 * to the supervisor, and tried again after a pause that doubles up to a bound; nothing is ever
 * skipped. Start and stop come from one thread, {@link #ring()} and {@link #condition()} from any.
 */
public final class Worker {

  private static final Duration FIRST_PAUSE = Duration.ofMillis(100);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(10);
  private static final Duration LAST_ROUND = Duration.ofSeconds(10);

  /** One piece of work. */
  @FunctionalInterface
  public interface Round {

    /**
     * @return how long to rest before the next one, unless the bell rings
     */
    Duration run() throws Exception;

    /** Gives back, in the worker's thread, what the rounds kept open. */
    default void leave() {}
  }

  private final String name;
  private final Round round;
  private final Duration longestPause;
  private final Supervisor supervisor;
  private final Semaphore bell = new Semaphore(0);
  private volatile Condition condition = Condition.ill("not started");
  private volatile boolean stopping;
  private volatile @Nullable Thread thread;
  private volatile boolean said;

  public Worker(String name, Round round) {
    this(name, LONGEST_PAUSE, round);
  }

  /**
   * @param longestPause between attempts that fail
   */
  public Worker(String name, Duration longestPause, Round round) {
    this(name, longestPause, round, Supervisor.OF_THE_PROCESS);
  }

  Worker(String name, Duration longestPause, Round round, Supervisor supervisor) {
    this.name = name;
    this.longestPause = longestPause;
    this.round = round;
    this.supervisor = supervisor;
  }

  public void start() {
    stopping = false;
    condition = Condition.ok();
    var started = new Thread(this::repeat, "driftward-" + name);
    started.setDaemon(true);
    thread = started;
    started.start();
  }

  /** No further round begins; whoever closes what the round in hand waits for calls it first. */
  public void stopSoon() {
    stopping = true;
    ring();
  }

  /** Returns when the round in hand is over; one that takes too long is interrupted. */
  public void stop() {
    stopSoon();
    var running = thread;
    if (running == null) {
      return;
    }
    try {
      running.join(LAST_ROUND.toMillis());
      if (running.isAlive()) {
        running.interrupt();
        running.join(LAST_ROUND.toMillis());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    thread = null;
    condition = Condition.ill("stopped");
  }

  /** There is something to do. */
  public void ring() {
    bell.release();
  }

  public boolean stopping() {
    return stopping;
  }

  /** From within a round: what the condition is until the end of the next one. */
  public void say(Condition now) {
    said = true;
    condition = now;
  }

  /** A worker without a living thread is ill, whatever was said last. */
  public Condition condition() {
    var running = thread;
    return running == null || running.isAlive() ? condition : Condition.ill("its thread has ended");
  }

  private void repeat() {
    try {
      var pause = FIRST_PAUSE;
      while (!stopping) {
        pause = step(pause);
      }
    } finally {
      round.leave();
    }
  }

  /**
   * @return the pause after the next failure
   */
  private Duration step(Duration pause) {
    said = false;
    try {
      var rest = round.run();
      if (!said) {
        condition = Condition.ok();
      }
      rest(rest);
      return FIRST_PAUSE;
    } catch (Throwable failure) {
      // Whoever interrupts us has asked us to stop; a failure may leave the mark behind.
      Thread.interrupted();
      if (stopping && !Failures.isOfTheMachine(failure)) {
        return pause;
      }
      // The message may quote what somebody sent; the class says what is away.
      condition = Condition.ill("trying again after " + failure.getClass().getSimpleName());
      supervisor.failed(name, failure);
      restQuietly(pause);
      var twice = pause.multipliedBy(2);
      return twice.compareTo(longestPause) < 0 ? twice : longestPause;
    }
  }

  private void restQuietly(Duration longest) {
    try {
      rest(longest);
    } catch (InterruptedException e) {
      // Only when stopping; the loop looks.
      Thread.interrupted();
    }
  }

  /** Until the bell rings; however often it rang, it is one call. */
  private void rest(Duration longest) throws InterruptedException {
    if (bell.tryAcquire(longest.toMillis(), TimeUnit.MILLISECONDS)) {
      bell.drainPermits();
    }
  }
}
