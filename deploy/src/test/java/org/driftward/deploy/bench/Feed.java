package org.driftward.deploy.bench;

/** One way for assessments to go in. */
interface Feed extends AutoCloseable {

  /** What stands in the first column. */
  String name();

  /**
   * Sends the next message and returns when it was accepted. Called by many threads at once.
   *
   * @return how many assessments were in it
   * @throws Exception if it was not accepted
   */
  int send() throws Exception;

  /** How many messages {@link #send()} sends. */
  default int messages() {
    return 1;
  }

  /** How many senders it is fair to run side by side. */
  int senders();

  @Override
  default void close() {}
}
