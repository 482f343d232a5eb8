package org.driftward.scoring.stream.state;

/**
 * How many encounters a task remembers, besides each with the ids of its assessments, up to 4 KiB.
 *
 * @param whole as they are, about 20 KiB of heap each
 * @param packed besides, as bytes, about 3 KiB each
 */
public record Memory(int whole, int packed) {

  public Memory {
    if (whole < 1 || packed < 0) {
      throw new IllegalArgumentException("at least one encounter has to be remembered");
    }
  }
}
