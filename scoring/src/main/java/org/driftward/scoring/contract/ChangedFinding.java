package org.driftward.scoring.contract;

import java.time.Instant;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/**
 * A finding that is worse than the same patient's usual state by what the catalogue says counts.
 *
 * @param from the usual value
 * @param to the newest value
 * @param since when it was first seen changed
 * @param group the body function it speaks about
 * @param words what changed, as a person would say it
 */
public record ChangedFinding(
    String code,
    @Nullable String site,
    @Nullable Side side,
    Scalar from,
    Scalar to,
    Instant since,
    Group group,
    String words) {}
