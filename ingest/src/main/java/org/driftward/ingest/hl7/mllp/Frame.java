package org.driftward.ingest.hl7.mllp;

/** What the next stretch of a connection holds. Equal only to itself. */
final class Frame {

  enum Kind {
    WHOLE,
    /** It broke off, because another began or the connection ended. */
    BROKEN,
    /** Larger than allowed; the rest was not read. */
    TOO_LARGE
  }

  private final Kind kind;
  private final byte[] message;

  Frame(Kind kind, byte[] message) {
    this.kind = kind;
    this.message = message.clone();
  }

  Kind kind() {
    return kind;
  }

  /** Without what frames it. */
  byte[] message() {
    return message.clone();
  }
}
