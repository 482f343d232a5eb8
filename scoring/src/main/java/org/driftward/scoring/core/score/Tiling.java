package org.driftward.scoring.core.score;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;

/** Whether the bands of a row leave no gap and no overlap, whatever the other inputs are. */
final class Tiling {

  private Tiling() {}

  /**
   * @throws BandException naming the first band at fault
   */
  static void check(Input input, List<Band> bands) {
    var others = new ArrayList<Input>();
    var seen = new LinkedHashSet<Integer>();
    for (var band : bands) {
      for (var given : band.given()) {
        if (seen.add(given.input().place())) {
          others.add(given.input());
        }
      }
    }
    check(input, bands, others, new long[Long.SIZE], 0);
  }

  private static void check(
      Input input, List<Band> bands, List<Input> others, long[] steps, int settled) {
    if (settled == others.size()) {
      var indices = new ArrayList<Integer>();
      for (int i = 0; i < bands.size(); i++) {
        if (bands.get(i).given(steps)) {
          indices.add(i);
        }
      }
      if (input.coded()) {
        words(input, bands, indices);
      } else {
        numbers(input, bands, indices);
      }
      return;
    }
    var other = others.get(settled);
    for (int word = 0; word < other.words().size(); word++) {
      steps[other.place()] = word;
      check(input, bands, others, steps, settled + 1);
    }
  }

  private static void words(Input input, List<Band> bands, List<Integer> indices) {
    long seen = 0;
    for (int i : indices) {
      long twice = seen & bands.get(i).words();
      if (twice != 0) {
        var word = input.words().get(Long.numberOfTrailingZeros(twice));
        throw new BandException(i, input.code() + " " + word + " is in two bands");
      }
      seen |= bands.get(i).words();
    }
    for (int word = 0; word < input.words().size(); word++) {
      if ((seen >>> word & 1) == 0) {
        throw new BandException(
            bands.size() - 1, input.code() + " " + input.words().get(word) + " is in no band");
      }
    }
  }

  private static void numbers(Input input, List<Band> bands, List<Integer> indices) {
    indices.sort(Comparator.comparingLong(i -> bands.get(i).from()));
    long next = Long.MIN_VALUE;
    boolean open = true;
    int last = 0;
    for (int i : indices) {
      var band = bands.get(i);
      if (!open || band.from() < next) {
        throw new BandException(i, "band " + band.text() + " overlaps " + text(bands, last));
      }
      if (band.from() > next) {
        var after = next == Long.MIN_VALUE ? "below it" : "after " + text(bands, last);
        throw new BandException(i, "band " + band.text() + " leaves a gap " + after);
      }
      open = band.upto() != Long.MAX_VALUE;
      next = open ? band.upto() + 1 : next;
      last = i;
    }
    if (open) {
      throw new BandException(last, "nothing is above " + input.code() + " " + text(bands, last));
    }
  }

  private static String text(List<Band> bands, int i) {
    return bands.get(i).text();
  }
}
