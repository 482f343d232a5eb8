package org.driftward.scoring.rescore;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A re-scoring as it is shown.
 *
 * @param version of the edition that is tried
 * @param from clinical time from which it would be in force
 * @param state running, finished, failed or adopted
 * @param failure in words, or null
 * @param by account that asked for it
 * @param endedAt when it finished, failed or was adopted; null while it runs
 */
public record RescoreView(
    String id,
    String version,
    Instant from,
    String state,
    @Nullable String failure,
    String by,
    Instant startedAt,
    @Nullable Instant endedAt,
    Counts counts) {}
