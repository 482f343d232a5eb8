package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * One class of risk. A definition lists its classes in order of precedence; the first that holds
 * counts, so the last one holds always.
 *
 * @param id as it stands in snapshots, for example {@code low-medium}; two classes may share it
 * @param total totals it holds for
 * @param single the fewest points in any one row it asks for, or 0
 * @param response what the source or common practice asks for, in our own words
 */
public record RiskClass(String id, Span total, int single, String response) {

  public RiskClass {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(total, "total");
    Objects.requireNonNull(response, "response");
  }

  boolean holds(BigDecimal score, int most) {
    return most >= single && total.holds(score);
  }

  boolean always() {
    return single == 0 && total.equals(Span.ALL);
  }
}
