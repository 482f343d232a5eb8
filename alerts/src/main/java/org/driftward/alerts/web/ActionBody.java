package org.driftward.alerts.web;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * What a person says with an action.
 *
 * @param note or null
 * @param reason required to hold and to close
 * @param to account to hand over to
 * @param until end of a hold
 * @param seenVersion version of the episode that the person was looking at, or null
 */
public record ActionBody(
    @Nullable String note,
    @Nullable String reason,
    @Nullable String to,
    @Nullable Instant until,
    @Nullable Long seenVersion) {

  static final ActionBody EMPTY = new ActionBody(null, null, null, null, null);
}
