package org.driftward.ingest.hl7.mllp;

/** What the next stretch of a connection holds. Equal only to itself. */
final class Frame {

  enum Kind {
    WHOLE,
    /** It broke off, because another began or the connection ended. */
    BROKEN,
    /** Larger than allowed; the rest was read and forgotten. */
    TOO_LARGE
  }

  private final Kind kind;
  private final byte[] message;
  private final long length;

  Frame(Kind kind, byte[] message, long length) {
    this.kind = kind;
    this.message = message.clone();
    this.length = length;
  }

  Kind kind() {
    return kind;
  }

  /** How many bytes came, whether they are remembered or not. */
  long length() {
    return length;
  }

  /** Without what frames it; of what is too large, the beginning. */
  byte[] message() {
    return message.clone();
  }
}
