package org.driftward.ingest.core;

import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Fault;

/** Collects every fault of one input, in the order they are found. Not thread-safe. */
public final class Faults {

  /**
   * How many faults one answer lists at most. A hostile input can hold a fault in every third byte;
   * the answer, and the record that keeps it, must stay bounded.
   */
  static final int MOST = 5_000;

  private final List<Fault> found = new ArrayList<>();
  private int count;

  public void add(String pointer, Rule rule, String detail) {
    add(new Fault(pointer, rule.word(), detail));
  }

  void add(Fault fault) {
    count++;
    if (count <= MOST) {
      found.add(fault);
    }
  }

  public boolean isEmpty() {
    return count == 0;
  }

  public List<Fault> list() {
    if (count <= MOST) {
      return List.copyOf(found);
    }
    var all = new ArrayList<>(found);
    all.add(
        new Fault("", Rule.TOO_MANY.word(), "and " + (count - MOST) + " more, not listed here"));
    return List.copyOf(all);
  }
}
