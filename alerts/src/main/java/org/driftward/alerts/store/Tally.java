package org.driftward.alerts.store;

/** A sum of what items that are worked apart came to. Used by one thread. */
final class Tally {

  private int sum;

  void add(int more) {
    sum += more;
  }

  int sum() {
    return sum;
  }
}
