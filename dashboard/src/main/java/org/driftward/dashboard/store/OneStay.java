package org.driftward.dashboard.store;

/** SQL that reads encounters that were merged as the one stay they are. */
final class OneStay {

  /**
   * Each encounter's piece is read along its own index, so the cost follows the pieces and not the
   * past. An assessment that was corrected after the merge is there under both numbers; the higher
   * revision counts, and of equal ones that of the surviving encounter.
   */
  private static final String ASSESSMENTS =
      """
      SELECT :encounter AS counts_in, piece.*
      FROM dashboard.one_stay(:encounter) AS stay (encounter)
      CROSS JOIN LATERAL (
        SELECT assessment, taken_at, body FROM dashboard.assessment kept
        WHERE kept.encounter = stay.encounter AND %s
          AND NOT EXISTS (
            SELECT 1 FROM dashboard.one_stay(:encounter) AS other (encounter)
            JOIN dashboard.assessment more
              ON more.encounter = other.encounter AND more.assessment = kept.assessment
            WHERE more.encounter <> kept.encounter
              AND (more.revision, more.encounter = :encounter, more.encounter)
                > (kept.revision, kept.encounter = :encounter, kept.encounter))
        ORDER BY taken_at DESC, assessment DESC LIMIT :limit) piece
      """;

  private OneStay() {}

  /**
   * Assessments that count in {@code :encounter}, no more than {@code :limit} of each number they
   * were recorded under; with the columns counts_in, assessment, taken_at and body.
   *
   * @param which condition on the columns of an assessment
   */
  static String assessments(String which) {
    return ASSESSMENTS.formatted(which);
  }
}
