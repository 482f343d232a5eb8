package org.driftward.scoring.core.change;

/**
 * The patient's own usual value of one series.
 *
 * @param centre median of the quiet period; for words the position of the usual one among its
 *     options
 * @param spread 1.4826 times the median absolute deviation, not below the catalogue's noise
 * @param sets how many values it rests on
 * @param from clinical time of the first, in milliseconds since the epoch
 * @param until clinical time of the last
 */
public record Baseline(double centre, double spread, int sets, long from, long until) {

  /** How far {@code value} lies from the centre, in spreads, signed. */
  double standardise(double value) {
    return (value - centre) / spread;
  }
}
