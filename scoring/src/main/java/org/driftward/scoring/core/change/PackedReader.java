package org.driftward.scoring.core.change;

/** Reads what {@link PackedWriter} wrote. */
final class PackedReader {

  private static final int MOST = 1 << 10;

  private final byte[] bytes;
  private final long unit;
  private final int decimals;
  private int at;
  private long lastTime;
  private long lastValue;

  PackedReader(byte[] bytes, int at, long unit, int decimals) {
    this.bytes = bytes;
    this.at = at;
    this.unit = unit;
    this.decimals = checked(decimals);
  }

  int count() {
    long count = unsigned();
    if (count < 0 || count > MOST) {
      throw new IllegalArgumentException("a count of " + count + " is no state of a series");
    }
    return (int) count;
  }

  long time() {
    lastTime += signed();
    return lastTime * unit;
  }

  double value() {
    if (decimals == Packed.RAW) {
      return raw();
    }
    lastValue += signed();
    return Packed.unscale(lastValue, decimals);
  }

  double number() {
    int own = checked(octet());
    return own == Packed.RAW ? raw() : Packed.unscale(signed(), own);
  }

  private int octet() {
    if (at == bytes.length) {
      throw new IllegalArgumentException("the state of a series ends after " + at + " bytes");
    }
    return bytes[at++] & 0xFF;
  }

  private long signed() {
    long value = unsigned();
    return (value >>> 1) ^ -(value & 1);
  }

  private long unsigned() {
    long value = 0;
    for (int shift = 0; shift < 64; shift += 7) {
      int octet = octet();
      value |= (octet & 0x7FL) << shift;
      if (octet < 0x80) {
        return value;
      }
    }
    throw new IllegalArgumentException("a number of more than 64 bits");
  }

  private double raw() {
    long bits = 0;
    for (int shift = 0; shift < 64; shift += 8) {
      bits |= (long) octet() << shift;
    }
    return Double.longBitsToDouble(bits);
  }

  private static int checked(int decimals) {
    if (decimals < 0 || decimals > Packed.RAW) {
      throw new IllegalArgumentException(decimals + " decimals");
    }
    return decimals;
  }
}
