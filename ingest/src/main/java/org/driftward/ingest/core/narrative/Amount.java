package org.driftward.ingest.core.narrative;

import org.jspecify.annotations.Nullable;

/**
 * A number with what belongs to it.
 *
 * @param number as said
 * @param first index of the first token
 * @param end exclusive
 * @param unit UCUM code; null where none was said
 * @param scale the highest grade, where one was said ("out of ten"); null where none was
 * @param exact false for a limit, a range, and where two numbers stand side by side
 * @param plus whether it was said as a grade ("two plus")
 */
record Amount(
    Numeral number,
    int first,
    int end,
    @Nullable String unit,
    @Nullable Integer scale,
    boolean exact,
    boolean plus) {}
