package org.driftward.scoring.core.change;

import java.util.Arrays;

/** Writes numbers in as few bytes as they need. */
final class PackedWriter {

  private final long unit;
  private final int decimals;
  private byte[] bytes = new byte[160];
  private int size;
  private long lastTime;
  private long lastValue;

  /**
   * @param unit in milliseconds; every time is a whole number of it
   * @param decimals that write every value exactly, or {@link Packed#RAW}
   */
  PackedWriter(long unit, int decimals) {
    this.unit = unit;
    this.decimals = decimals;
  }

  void octet(int octet) {
    if (size == bytes.length) {
      bytes = Arrays.copyOf(bytes, 2 * size);
    }
    bytes[size++] = (byte) octet;
  }

  void count(int count) {
    unsigned(count);
  }

  void time(long millis) {
    long time = millis / unit;
    signed(time - lastTime);
    lastTime = time;
  }

  void value(double value) {
    if (decimals == Packed.RAW) {
      raw(value);
      return;
    }
    long scaled = Packed.scale(value, decimals);
    signed(scaled - lastValue);
    lastValue = scaled;
  }

  /** A number with its own count of decimals. */
  void number(double number) {
    int own = Packed.decimals(number, 0);
    octet(own);
    if (own == Packed.RAW) {
      raw(number);
    } else {
      signed(Packed.scale(number, own));
    }
  }

  byte[] bytes() {
    return Arrays.copyOf(bytes, size);
  }

  /** Small numbers of either sign become small ones: 0, -1, 1, -2 to 0, 1, 2, 3. */
  private void signed(long value) {
    unsigned((value << 1) ^ (value >> 63));
  }

  /** Seven bits a byte, low ones first; the top bit says that more follow. */
  private void unsigned(long value) {
    long rest = value;
    while ((rest & ~0x7FL) != 0) {
      octet((int) (rest & 0x7F) | 0x80);
      rest >>>= 7;
    }
    octet((int) rest);
  }

  private void raw(double value) {
    long bits = Double.doubleToRawLongBits(value);
    for (int shift = 0; shift < 64; shift += 8) {
      octet((int) (bits >>> shift));
    }
  }
}
