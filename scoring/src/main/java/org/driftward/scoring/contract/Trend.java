package org.driftward.scoring.contract;

import java.time.Instant;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/**
 * Slope of one series over the recent past.
 *
 * @param code a finding's code, or a score's id
 * @param perHour Theil-Sen slope, in the series' unit per hour
 * @param pValue two-sided, Mann-Kendall with tie correction
 * @param s Mann-Kendall's S
 * @param sets how many values the window holds
 * @param from time of the first value in the window
 * @param significant whether the policy's level is passed
 * @param projectedCrossing when the next threshold is reached if this goes on; null where the data
 *     carry no projection
 * @param earliest of the crossing, from the slope's confidence interval, or null
 * @param latest of the crossing, or null when the interval is open
 * @param threshold the next threshold in the direction of travel, or null
 */
public record Trend(
    String code,
    @Nullable String site,
    @Nullable Side side,
    double perHour,
    double pValue,
    int s,
    int sets,
    Instant from,
    boolean significant,
    @Nullable Instant projectedCrossing,
    @Nullable Instant earliest,
    @Nullable Instant latest,
    @Nullable Double threshold) {}
