package org.driftward.alerts.core.shift;

import java.util.List;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.policy.Audience;
import org.jspecify.annotations.Nullable;

/** Says who an audience is at this moment. Thread-safe, blocking. */
public interface OnDuty {

  /**
   * @param bed or null where it is not known
   * @return newest first; empty where the shift says nobody, never somebody off duty
   */
  List<Shift> of(Audience audience, String ward, @Nullable String bed);
}
