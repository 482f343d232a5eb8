package org.driftward.scoring.stream;

import java.util.function.Supplier;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.timeline.Timeline;

/**
 * What the topology is built from. Shared by all tasks, so every part is thread-safe.
 *
 * @param timeline under the editions in force now
 * @param remembered how many encounters each task remembers
 */
record ScoringParts(
    Supplier<Timeline> timeline, Catalogue catalogue, ScoringMetrics metrics, int remembered) {}
