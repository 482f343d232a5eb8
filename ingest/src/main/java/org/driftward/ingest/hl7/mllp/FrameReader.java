package org.driftward.ingest.hl7.mllp;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * Reads frames: VT, message, FS, CR. Bytes between frames mean nothing and are passed over, a
 * missing CR among them. Used by one thread.
 */
final class FrameReader {

  static final int BEGIN = 0x0B;
  static final int END = 0x1C;
  static final int CARRIAGE_RETURN = 0x0D;

  private final InputStream in;
  private final int mostBytes;
  private boolean begun;

  FrameReader(InputStream in, int mostBytes) {
    this.in = new BufferedInputStream(in);
    this.mostBytes = mostBytes;
  }

  /**
   * Waits for a frame to begin.
   *
   * @return false if the connection ends before
   */
  boolean awaitBegin() throws IOException {
    while (!begun) {
      int next = in.read();
      if (next < 0) {
        return false;
      }
      begun = next == BEGIN;
    }
    return true;
  }

  /** The frame that has begun, to its end, however large; only so much is remembered. */
  Frame read() {
    var message = new ByteArrayOutputStream(512);
    long length = 0;
    int next = nextByte();
    while (next != END && next != BEGIN && next >= 0) {
      if (length < mostBytes) {
        message.write(next);
      }
      length++;
      next = nextByte();
    }
    begun = next == BEGIN;
    var whole = next == END ? Frame.Kind.WHOLE : Frame.Kind.BROKEN;
    var kind = length > mostBytes ? Frame.Kind.TOO_LARGE : whole;
    return new Frame(kind, message.toByteArray(), length);
  }

  /** Reset, or closed because it took too long, is an end; what came so far is not forgotten. */
  private int nextByte() {
    try {
      return in.read();
    } catch (IOException e) {
      return -1;
    }
  }
}
