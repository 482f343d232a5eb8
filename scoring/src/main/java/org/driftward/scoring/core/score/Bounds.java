package org.driftward.scoring.core.score;

import java.util.List;

/**
 * The least and the most that the known inputs allow, exactly: inputs that several rows share take
 * one value at a time in all of them. Under NEWS2's oxygen scale 2, unknown oxygen decides both its
 * own two points and the cell of the saturation, and the two cannot disagree.
 *
 * @param low fewest points of all
 * @param high most points of all
 * @param singleLow fewest points that the best-scoring row may have
 * @param singleHigh most points that any one row may have
 */
record Bounds(int low, int high, int singleLow, int singleHigh) {

  /**
   * @param groups rows that serve the patient, by group
   * @param steps the known inputs by place; overwritten at the places of unknown ones
   * @param known inputs as bits
   * @param atoms by place, one value from each stretch of an input that the rows tell apart
   */
  static Bounds of(List<List<Row>> groups, long[] steps, long known, long[][] atoms, boolean max) {
    int low = 0;
    int high = 0;
    int singleLow = 0;
    int singleHigh = 0;
    long done = 0;
    for (int g = 0; g < groups.size(); g++) {
      if ((done >>> g & 1) == 1) {
        continue;
      }
      long open = open(groups.get(g), known);
      if (open == 0) {
        int points = points(groups.get(g), steps);
        low = max ? Math.max(low, points) : low + points;
        high = max ? Math.max(high, points) : high + points;
        singleLow = Math.max(singleLow, points);
        singleHigh = Math.max(singleHigh, points);
        continue;
      }
      long members = linked(groups, g, open, known);
      var part = new Enumeration(groups, members, steps, atoms, max);
      part.run(allOpen(groups, members, known));
      low = max ? Math.max(low, part.low) : low + part.low;
      high = max ? Math.max(high, part.high) : high + part.high;
      singleLow = Math.max(singleLow, part.singleLow);
      singleHigh = Math.max(singleHigh, part.singleHigh);
      done |= members;
    }
    return new Bounds(low, high, singleLow, singleHigh);
  }

  /** Groups that hang together with group {@code first} through unknown inputs, as bits. */
  private static long linked(List<List<Row>> groups, int first, long open, long known) {
    long members = 1L << first;
    long reach = open;
    boolean grew = true;
    while (grew) {
      grew = false;
      for (int g = 0; g < groups.size(); g++) {
        long other = open(groups.get(g), known);
        if ((members >>> g & 1) == 0 && (other & reach) != 0) {
          members |= 1L << g;
          reach |= other;
          grew = true;
        }
      }
    }
    return members;
  }

  private static long allOpen(List<List<Row>> groups, long members, long known) {
    long open = 0;
    for (long rest = members; rest != 0; rest &= rest - 1) {
      open |= open(groups.get(Long.numberOfTrailingZeros(rest)), known);
    }
    return open;
  }

  private static long open(List<Row> group, long known) {
    long open = 0;
    for (int r = 0; r < group.size(); r++) {
      open |= group.get(r).inputs() & ~known;
    }
    return open;
  }

  private static int points(List<Row> group, long[] steps) {
    int points = 0;
    for (int r = 0; r < group.size(); r++) {
      points = Math.max(points, group.get(r).band(steps).points());
    }
    return points;
  }

  /** Tries every combination of the unknown inputs that some groups share. */
  private static final class Enumeration {
    private final List<List<Row>> groups;
    private final long members;
    private final long[] steps;
    private final long[][] atoms;
    private final boolean max;
    private int low = Integer.MAX_VALUE;
    private int high;
    private int singleLow = Integer.MAX_VALUE;
    private int singleHigh;

    Enumeration(List<List<Row>> groups, long members, long[] steps, long[][] atoms, boolean max) {
      this.groups = groups;
      this.members = members;
      this.steps = steps;
      this.atoms = atoms;
      this.max = max;
    }

    void run(long open) {
      if (open == 0) {
        take();
        return;
      }
      int place = Long.numberOfTrailingZeros(open);
      for (long atom : atoms[place]) {
        steps[place] = atom;
        run(open & (open - 1));
      }
    }

    private void take() {
      int total = 0;
      int single = 0;
      for (long rest = members; rest != 0; rest &= rest - 1) {
        int points = points(groups.get(Long.numberOfTrailingZeros(rest)), steps);
        total = max ? Math.max(total, points) : total + points;
        single = Math.max(single, points);
      }
      low = Math.min(low, total);
      high = Math.max(high, total);
      singleLow = Math.min(singleLow, single);
      singleHigh = Math.max(singleHigh, single);
    }
  }
}
