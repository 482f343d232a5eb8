package org.driftward.deploy.command;

import java.io.IOException;
import java.time.Duration;

/**
 * Asks again while a server is away or asks to wait: it may be restarting, and what was sent before
 * is kept. Gives up after ten minutes without an answer.
 */
final class Patience {

  private static final int UNAVAILABLE = 503;
  private static final Duration LONGEST = Duration.ofMinutes(10);
  private static final long FIRST_WAIT = 1;
  private static final long LONGEST_WAIT = 15;

  private final ProgressBar bar;
  private final boolean throughRestarts;

  private Patience(ProgressBar bar, boolean throughRestarts) {
    this.bar = bar;
    this.throughRestarts = throughRestarts;
  }

  /** Waits only if a server asks to. */
  static Patience withAServerThatIsThere(ProgressBar bar) {
    return new Patience(bar, false);
  }

  /** Waits also while there is none. */
  static Patience alsoThroughARestart(ProgressBar bar) {
    return new Patience(bar, true);
  }

  /** Something that may be asked any number of times. */
  @FunctionalInterface
  interface Question {
    Server.Answer ask() throws IOException;
  }

  Server.Answer insist(Question question) throws IOException {
    long wait = FIRST_WAIT;
    for (long waited = 0; ; waited += wait, wait = Math.min(2 * wait, LONGEST_WAIT)) {
      boolean last = waited > LONGEST.toSeconds();
      try {
        var answer = question.ask();
        if (answer.status() != UNAVAILABLE || last) {
          return answer;
        }
        wait = answer.headers().firstValueAsLong("Retry-After").orElse(wait);
      } catch (IOException e) {
        if (last || !throughRestarts || Thread.currentThread().isInterrupted()) {
          throw e;
        }
      }
      bar.say("waiting for the server");
      pause(wait);
    }
  }

  private static void pause(long seconds) throws IOException {
    try {
      Thread.sleep(Duration.ofSeconds(seconds).toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("Interrupted", e);
    }
  }
}
