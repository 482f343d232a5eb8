package org.driftward.ingest.core.files;

import java.util.List;

/**
 * One row of a file, cut out but not read.
 *
 * @param from where it begins in the bytes it was cut from
 * @param to where its last byte ends, its line end left out
 * @param next where the next row begins
 * @param lines how many line ends it and its own line end hold
 * @param whole false for a row that has no end: a quote that is never closed, or a line without
 *     measure
 */
public record Slice(int from, int to, int next, int lines, boolean whole) {

  public boolean isEmpty() {
    return from == to;
  }

  /** Cuts bytes into rows. Keeps nothing between calls; thread-safe. */
  @FunctionalInterface
  public interface Cutter {

    /** A row that is longer than this is broken; no bedside examination comes near it. */
    int LONGEST = 256 << 10;

    /**
     * The rows that {@code bytes} begins with. A row that may go on behind the end is left for the
     * next call, which begins with it.
     *
     * @param last whether nothing comes behind these bytes
     * @param most how many rows at most
     */
    List<Slice> cut(byte[] bytes, boolean last, int most);
  }
}
