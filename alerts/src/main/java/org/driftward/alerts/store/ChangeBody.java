package org.driftward.alerts.store;

import org.driftward.alerts.contract.Episode;
import org.jspecify.annotations.Nullable;

/** The body of a journal entry about an episode. */
record ChangeBody(@Nullable String note, @Nullable String reason, Episode episode) {}
