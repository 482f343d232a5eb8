package org.driftward.alerts.core.outreach;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.core.policy.Audience;
import org.driftward.alerts.core.policy.Recipient;
import org.jspecify.annotations.Nullable;

/**
 * Who an audience is now. The policy file answers it with fixed lines; a roster can answer it with
 * whoever is on duty. Asked inside the transaction that tells of the alarm.
 */
@FunctionalInterface
public interface Recipients {
  List<Recipient> of(Audience audience, String ward, @Nullable String bed, Instant now);
}
