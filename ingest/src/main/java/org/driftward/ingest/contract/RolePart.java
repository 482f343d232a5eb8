package org.driftward.ingest.contract;

/**
 * Something of a role that runs: a consumer, a listener, a topology, a timer. The composition point
 * in {@code deploy} starts the parts of the roles this process plays, in order, and stops them in
 * reverse. A part does nothing before {@link #start()} and nothing after {@link #stop()}.
 *
 * <p>Both calls come from one thread; {@link #condition()} from any.
 */
public interface RolePart {

  Role role();

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
   * @param why in words, never a patient's data
   */
  record Condition(boolean well, String why) {
    public static Condition ok() {
      return new Condition(true, "running");
    }

    public static Condition ill(String why) {
      return new Condition(false, why);
    }
  }
}
