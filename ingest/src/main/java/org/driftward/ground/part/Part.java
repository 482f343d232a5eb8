package org.driftward.ground.part;

import java.util.Collection;

/**
 * Something that runs: a consumer, a listener, a topology, a timer. It does nothing before {@link
 * #start()} and nothing after {@link #stop()}.
 *
 * <p>Both calls come from one thread; {@link #condition()} from any.
 */
public interface Part {

  /** Lower-case words with hyphens; names the part in logs, metrics and health checks. */
  String name();

  /**
   * Starts and returns; work goes on in the part's own threads.
   *
   * @throws RuntimeException if it cannot start at all; waiting for Kafka or the database is no
   *     reason
   */
  void start();

  /** Finishes what is in hand, releases everything, and returns. May be called twice. */
  void stop();

  Condition condition();

  /**
   * @param well whether the part does its work now
   * @param why in words, never what somebody sent
   */
  record Condition(boolean well, String why) {
    public static Condition ok() {
      return new Condition(true, "running");
    }

    /** It goes on, and something that it could not do is set aside. */
    public static Condition but(String what) {
      return new Condition(true, "running, but " + what);
    }

    public static Condition ill(String why) {
      return new Condition(false, why);
    }

    /** Of several that make one part: the first that is ill, else the first that has a word. */
    public static Condition of(Collection<Condition> all) {
      return all.stream()
          .filter(one -> !one.well())
          .findFirst()
          .or(() -> all.stream().filter(one -> !one.equals(ok())).findFirst())
          .orElseGet(Condition::ok);
    }
  }
}
