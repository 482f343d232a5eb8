package org.driftward.ingest.work;

import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.driftward.ingest.contract.RolePart.Condition;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * One thread that takes what is to be done, and rests when there is nothing. A failure is told in
 * the condition and tried again after a pause that doubles up to a bound; nothing is ever skipped.
 * Start and stop come from one thread, {@link #ring()} and {@link #condition()} from any.
 */
public final class Repeating {

  private static final Logger LOG = Logger.getLogger(Repeating.class);
  private static final Duration FIRST_PAUSE = Duration.ofMillis(200);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(10);
  private static final Duration REST = Duration.ofSeconds(1);
  private static final Duration LAST_WORDS = Duration.ofSeconds(10);

  /** One piece of work. */
  @FunctionalInterface
  public interface Round {
    /**
     * @return false if there was nothing to do
     */
    boolean run();
  }

  private final String name;
  private final Round round;
  private final Semaphore bell = new Semaphore(0);
  private volatile Condition condition = Condition.ill("not started");
  private volatile boolean stopping;
  private @Nullable Thread thread;

  public Repeating(String name, Round round) {
    this.name = name;
    this.round = round;
  }

  public void start() {
    stopping = false;
    condition = Condition.ok();
    var started = new Thread(this::repeat, "driftward-" + name);
    started.setDaemon(true);
    thread = started;
    started.start();
  }

  /** Returns when the round in hand is over. */
  public void stop() {
    stopping = true;
    ring();
    var running = thread;
    if (running == null) {
      return;
    }
    try {
      running.join(LAST_WORDS.toMillis());
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

  public Condition condition() {
    return condition;
  }

  private void repeat() {
    var pause = FIRST_PAUSE;
    while (!stopping) {
      try {
        boolean busy = round.run();
        condition = Condition.ok();
        pause = FIRST_PAUSE;
        if (!busy) {
          rest(REST);
        }
      } catch (RuntimeException e) {
        // The message may quote what somebody sent; the class says what is away.
        condition = Condition.ill("trying again after " + e.getClass().getSimpleName());
        LOG.warnf("A part of intake failed and tries again: %s, %s", name, e.getClass().getName());
        rest(pause);
        pause =
            pause.multipliedBy(2).compareTo(LONGEST_PAUSE) < 0
                ? pause.multipliedBy(2)
                : LONGEST_PAUSE;
      }
    }
  }

  /** Until the bell rings; however often it rang, it is one call. */
  private void rest(Duration longest) {
    try {
      if (bell.tryAcquire(longest.toMillis(), TimeUnit.MILLISECONDS)) {
        bell.drainPermits();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      stopping = true;
    }
  }
}
