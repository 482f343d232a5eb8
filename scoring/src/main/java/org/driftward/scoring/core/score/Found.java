package org.driftward.scoring.core.score;

import java.time.Instant;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * An input that is known.
 *
 * @param steps the value in steps of the input's resolution, or the place of its word
 * @param shown the value as recorded or derived
 * @param unit UCUM, or null for grades and words
 * @param takenAt of a value derived from several readings, the oldest
 * @param derivedFrom in words, or null where recorded as such
 */
record Found(
    long steps,
    Scalar shown,
    @Nullable String unit,
    Instant takenAt,
    @Nullable String derivedFrom) {}
