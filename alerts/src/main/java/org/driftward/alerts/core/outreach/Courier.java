package org.driftward.alerts.core.outreach;

import org.driftward.alerts.contract.Channel;

/** Carries parcels by one channel. Thread-safe, blocking, and back within the policy's timeout. */
public interface Courier {

  Channel channel();

  /** One attempt; what goes wrong is an outcome, not an exception. */
  Outcome carry(Parcel parcel);
}
