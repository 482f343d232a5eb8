package org.driftward.alerts.work;

import java.time.Duration;
import org.driftward.ingest.contract.RolePart.Condition;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * One thread that does the same again and again. A failure is told in the condition and tried again
 * after a pause that doubles up to a bound; nothing is ever skipped. Start and stop come from one
 * thread.
 */
public final class Repeating {

  private static final Logger LOG = Logger.getLogger(Repeating.class);
  private static final Duration FIRST_PAUSE = Duration.ofMillis(100);
  private static final Duration LAST_WORDS = Duration.ofSeconds(10);

  /** One round. Waits by itself where there is nothing to do. */
  @FunctionalInterface
  public interface Round {
    void run() throws InterruptedException;
  }

  private final String name;
  private final Round round;
  private final Duration longestPause;
  private volatile Condition condition = Condition.ill("not started");
  private volatile boolean stopping;
  private @Nullable Thread thread;

  public Repeating(String name, Duration longestPause, Round round) {
    this.name = name;
    this.longestPause = longestPause;
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
    var running = thread;
    if (running == null) {
      return;
    }
    running.interrupt();
    try {
      running.join(LAST_WORDS.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    thread = null;
    condition = Condition.ill("stopped");
  }

  public Condition condition() {
    return condition;
  }

  private void repeat() {
    var pause = FIRST_PAUSE;
    while (!stopping) {
      try {
        round.run();
        condition = Condition.ok();
        pause = FIRST_PAUSE;
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      } catch (RuntimeException e) {
        if (stopping) {
          return;
        }
        // The message may quote a record; the class says what is away.
        condition = Condition.ill("trying again after " + e.getClass().getSimpleName());
        LOG.warnf("A part of alerts failed and tries again: %s, %s", name, cause(e));
        if (!sleep(pause)) {
          return;
        }
        pause = shorter(pause.multipliedBy(2), longestPause);
      }
    }
  }

  private static String cause(Throwable failure) {
    var names = new StringBuilder(failure.getClass().getSimpleName());
    for (@Nullable Throwable t = failure.getCause(); t != null; t = t.getCause()) {
      names.append(" by ").append(t.getClass().getSimpleName());
    }
    return names.toString();
  }

  private static boolean sleep(Duration pause) {
    try {
      Thread.sleep(pause.toMillis());
      return true;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private static Duration shorter(Duration one, Duration other) {
    return one.compareTo(other) < 0 ? one : other;
  }
}
