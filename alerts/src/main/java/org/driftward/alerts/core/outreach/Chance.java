package org.driftward.alerts.core.outreach;

/** Scatters attempts, so that many senders do not knock at the same moment. Thread-safe. */
@FunctionalInterface
public interface Chance {

  /**
   * @return from 0, inclusive, to 1, exclusive
   */
  double next();
}
