package org.driftward.scoring.stream.state;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Arrays;

/** Grows as it is written to. Small whole numbers take one byte. */
final class ByteWriter {

  private byte[] bytes;
  private int size;

  ByteWriter(int expected) {
    bytes = new byte[expected];
  }

  ByteWriter octet(int value) {
    room(1);
    bytes[size++] = (byte) value;
    return this;
  }

  /** Seven bits to a byte, lowest first; for numbers that are not negative. */
  ByteWriter count(long value) {
    room(10);
    long rest = value;
    while ((rest & ~0x7FL) != 0) {
      bytes[size++] = (byte) ((rest & 0x7F) | 0x80);
      rest >>>= 7;
    }
    bytes[size++] = (byte) rest;
    return this;
  }

  /** Of either sign, small ones short. */
  ByteWriter signed(long value) {
    return count((value << 1) ^ (value >> 63));
  }

  /** Four bytes, highest first. */
  ByteWriter fixed(int value) {
    return octet(value >>> 24).octet(value >>> 16).octet(value >>> 8).octet(value);
  }

  /** Eight bytes, highest first. */
  ByteWriter fixed(long value) {
    return fixed((int) (value >>> 32)).fixed((int) value);
  }

  /** Length, then UTF-8. */
  ByteWriter text(String text) {
    return block(text.getBytes(UTF_8));
  }

  /** Length, then the bytes. */
  ByteWriter block(byte[] block) {
    return count(block.length).raw(block);
  }

  ByteWriter raw(byte[] block) {
    room(block.length);
    System.arraycopy(block, 0, bytes, size, block.length);
    size += block.length;
    return this;
  }

  byte[] bytes() {
    return Arrays.copyOf(bytes, size);
  }

  private void room(int more) {
    if (size + more > bytes.length) {
      bytes = Arrays.copyOf(bytes, Math.max(bytes.length * 2, size + more));
    }
  }
}
