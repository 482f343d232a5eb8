package org.driftward.ingest.fuzz;

import java.util.Arrays;
import java.util.Random;

/** What a bad line does to a message: bytes changed, a piece lost, the end cut off. */
final class Bytes {

  private Bytes() {}

  static byte[] broken(byte[] bytes, Random random) {
    if (bytes.length == 0) {
      return bytes;
    }
    return switch (random.nextInt(3)) {
      case 0 -> Arrays.copyOf(bytes, random.nextInt(bytes.length));
      case 1 -> flipped(bytes, random);
      default -> without(bytes, random);
    };
  }

  private static byte[] flipped(byte[] bytes, Random random) {
    var changed = bytes.clone();
    for (int i = 0; i <= random.nextInt(4); i++) {
      changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
    }
    return changed;
  }

  private static byte[] without(byte[] bytes, Random random) {
    int from = random.nextInt(bytes.length);
    int to = from + random.nextInt(Math.min(40, bytes.length - from));
    var shorter = new byte[bytes.length - (to - from)];
    System.arraycopy(bytes, 0, shorter, 0, from);
    System.arraycopy(bytes, to, shorter, from, bytes.length - to);
    return shorter;
  }
}
