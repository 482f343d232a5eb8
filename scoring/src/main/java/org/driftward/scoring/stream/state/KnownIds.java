package org.driftward.scoring.stream.state;

import java.util.Arrays;

/**
 * The assessments that an encounter has had, by their hashes. Nearly every assessment that arrives
 * is new, and asking the store for what is not there costs as much as writing it; an assessment
 * that this does not hold has not come before, so the store need not be asked. Used by one thread.
 */
final class KnownIds {

  /** 4 KiB. The histories of most stays are shorter; beyond, the store is asked again. */
  static final int MOST = 1024;

  /** Sorted, up to {@code size}. */
  private int[] hashes = new int[8];

  private int size;
  private boolean all;

  private KnownIds(boolean all) {
    this.all = all;
  }

  /** Of an encounter that has had none. */
  static KnownIds none() {
    return new KnownIds(true);
  }

  /** Of an encounter that may have had any. */
  static KnownIds some() {
    return new KnownIds(false);
  }

  /** False only for what has not been added and had not come before. */
  boolean mayHold(String id) {
    return !all || place(id) >= 0;
  }

  void add(String id) {
    if (!all) {
      return;
    }
    int place = place(id);
    if (place >= 0) {
      return;
    }
    if (size == MOST) {
      all = false;
      hashes = new int[0];
      return;
    }
    if (size == hashes.length) {
      hashes = Arrays.copyOf(hashes, 2 * size);
    }
    int at = -place - 1;
    System.arraycopy(hashes, at, hashes, at + 1, size - at);
    hashes[at] = id.hashCode();
    size++;
  }

  /** As of {@link Arrays#binarySearch(int[], int)}. */
  private int place(String id) {
    return Arrays.binarySearch(hashes, 0, size, id.hashCode());
  }
}
