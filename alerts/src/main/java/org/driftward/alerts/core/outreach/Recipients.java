package org.driftward.alerts.core.outreach;

import java.util.List;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.core.policy.Audience;
import org.jspecify.annotations.Nullable;

/** Whom an audience is told by now. Asked inside the transaction that tells of the alarm. */
@FunctionalInterface
public interface Recipients {

  /**
   * @param channel one that leaves the house
   * @param bed or null where it is not known
   */
  List<Addressee> of(Audience audience, Channel channel, String ward, @Nullable String bed);
}
