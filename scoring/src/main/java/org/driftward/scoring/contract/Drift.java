package org.driftward.scoring.contract;

import java.time.Instant;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/**
 * How far the newest value of one series lies from the patient's own baseline.
 *
 * @param baseline median of the quiet period, in {@code unit}
 * @param spread 1.4826 times the median absolute deviation, not below the catalogue's noise
 * @param drift {@code (value - baseline) / spread}, signed, without unit
 * @param worse whether this direction is the worse one and the policy's limit is passed
 * @param accumulated the two-sided CUSUM of the standardised drift, the larger arm, signed; catches
 *     small drift that goes on
 * @param sets how many values the baseline rests on
 * @param from first value of the quiet period
 * @param until last value of the quiet period
 */
public record Drift(
    String code,
    @Nullable String site,
    @Nullable Side side,
    double value,
    @Nullable String unit,
    double baseline,
    double spread,
    double drift,
    boolean worse,
    double accumulated,
    int sets,
    Instant from,
    Instant until) {

  /**
   * The drift as a person would say it.
   *
   * @param name the finding's name in the catalogue
   */
  public String words(String name) {
    var distance = value - baseline;
    return name
        + " "
        + Plain.number(value, 2)
        + Plain.unit(unit)
        + ": "
        + Plain.number(Math.abs(distance), 2)
        + (distance < 0 ? " below" : " above")
        + " this patient's usual "
        + Plain.number(baseline, 2)
        + " ("
        + Plain.number(Math.abs(drift), 1)
        + " times the usual spread; "
        + Plain.number(Math.abs(accumulated), 1)
        + " added up over recent sets; usual from "
        + sets
        + " values)";
  }
}
