package org.driftward.scoring.stream;

import java.util.function.Supplier;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.timeline.Timeline;
import org.driftward.scoring.stream.state.Memory;

/**
 * What the topology is built from. Shared by all tasks, so every part is thread-safe.
 *
 * @param timeline under the editions in force now
 * @param memory of each task
 */
record ScoringParts(
    Supplier<Timeline> timeline, Catalogue catalogue, ScoringMetrics metrics, Memory memory) {}
