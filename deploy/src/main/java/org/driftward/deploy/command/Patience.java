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

  Patience(ProgressBar bar) {
    this.bar = bar;
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
        if (last || Thread.currentThread().isInterrupted()) {
          throw e;
        }
      }
      bar.show("waiting for the server", waited, LONGEST.toSeconds());
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
