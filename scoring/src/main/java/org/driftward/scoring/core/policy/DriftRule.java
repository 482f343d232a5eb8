package org.driftward.scoring.core.policy;

/**
 * When a distance from the patient's own baseline counts. All in spreads of that patient.
 *
 * @param limit one value this far away has drifted; a single value adds no more than this to the
 *     sums, so that one wrong reading does not pass for a lasting shift
 * @param allowance the slack {@code k} of the two-sided CUSUM: half the shift to be found
 * @param decision the limit {@code h} of the CUSUM; a sum is held there, so that it falls again as
 *     soon as the patient returns to the baseline
 */
public record DriftRule(double limit, double allowance, double decision) {

  public DriftRule {
    Require.positive("drift limit", limit);
    Require.positive("drift allowance", allowance);
    Require.positive("drift decision", decision);
    if (limit <= allowance) {
      throw new IllegalArgumentException(
          "drift limit " + limit + " does not exceed the allowance " + allowance);
    }
  }
}
