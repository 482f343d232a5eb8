package org.driftward.scoring.contract;

import java.time.Duration;
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
    @Nullable Double threshold) {

  /**
   * The trend as a person would say it.
   *
   * @param name the finding's or score's name
   * @param asOf clinical time of the newest value
   */
  public String words(String name, Instant asOf) {
    return name
        + (perHour == 0 ? " holds, " : perHour < 0 ? " falls by " : " rises by ")
        + Plain.rate(perHour)
        + " per hour ("
        + sets
        + " values in "
        + Plain.time(Duration.between(from, asOf))
        + (significant ? ", more than chance" : ", may be chance")
        + (pValue < 0.0001 ? ", p below 0.0001" : ", p " + Plain.number(pValue, 4))
        + ")"
        + projection(asOf);
  }

  private String projection(Instant asOf) {
    if (projectedCrossing == null || threshold == null || earliest == null) {
      return "";
    }
    var range =
        latest == null
            ? ", not before " + Plain.time(Duration.between(asOf, earliest))
            : ", between "
                + Plain.time(Duration.between(asOf, earliest))
                + " and "
                + Plain.time(Duration.between(asOf, latest));
    return "; if this goes on, "
        + Plain.number(threshold, 2)
        + " is reached in about "
        + Plain.time(Duration.between(asOf, projectedCrossing))
        + range;
  }
}
