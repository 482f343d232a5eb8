package org.driftward.ingest.hl7.mllp;

/** What is done with the messages of every connection. Thread-safe. */
interface MessageHandler {

  /** The answer to a message; may wait as long as Kafka may take. */
  byte[] take(byte[] message);

  /**
   * The answer to a message that is too large, by its beginning.
   *
   * @param length of the whole message, as far as it came
   */
  byte[] tooLarge(byte[] beginning, long length);

  /** A message broke off; nobody waits for an answer. */
  void broken(byte[] part);
}
