package org.driftward.scoring.stream;

import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.timeline.Timeline;

/**
 * What the topology is built from. Shared by all tasks, so every part is thread-safe.
 *
 * @param remembered how many encounters each task remembers
 */
record ScoringParts(
    Timeline timeline, Catalogue catalogue, ScoringMetrics metrics, int remembered) {}
