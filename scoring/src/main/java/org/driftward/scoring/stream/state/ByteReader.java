package org.driftward.scoring.stream.state;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Arrays;

/**
 * Reads what {@link ByteWriter} wrote. Bytes that end too early are an {@link
 * IllegalArgumentException}.
 */
final class ByteReader {

  private final byte[] bytes;
  private int at;

  ByteReader(byte[] bytes, int from) {
    this.bytes = bytes;
    this.at = from;
  }

  int octet() {
    if (at >= bytes.length) {
      throw new IllegalArgumentException("ends after " + bytes.length + " bytes");
    }
    return bytes[at++] & 0xFF;
  }

  long count() {
    long value = 0;
    for (int shift = 0; shift < 64; shift += 7) {
      int octet = octet();
      value |= (long) (octet & 0x7F) << shift;
      if (octet < 0x80) {
        return value;
      }
    }
    throw new IllegalArgumentException("a number of more than ten bytes");
  }

  long signed() {
    long value = count();
    return (value >>> 1) ^ -(value & 1);
  }

  int fixedInt() {
    return (octet() << 24) | (octet() << 16) | (octet() << 8) | octet();
  }

  long fixedLong() {
    return ((long) fixedInt() << 32) | (fixedInt() & 0xFFFF_FFFFL);
  }

  String text() {
    return new String(block(), UTF_8);
  }

  byte[] block() {
    return raw((int) count());
  }

  /** Everything that is left. */
  byte[] rest() {
    return raw(bytes.length - at);
  }

  private byte[] raw(int length) {
    if (length < 0 || length > bytes.length - at) {
      throw new IllegalArgumentException("ends after " + bytes.length + " bytes");
    }
    at += length;
    return Arrays.copyOfRange(bytes, at - length, at);
  }
}
