package org.driftward.ingest.core.mapping;

import java.util.Map;
import java.util.Objects;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/**
 * One line of a mapping, as a person writes it.
 *
 * @param source the one feed it holds for, or null where it holds for every feed
 * @param system the coding system as feeds name it; null or empty where they name none
 * @param values the sender's answers and the option that each means; null where there are none
 * @param units the sender's words for units and the UCUM unit that each means with this code; null
 *     where there are none
 * @see Meaning
 */
public record CodeRow(
    @Nullable String source,
    @Nullable String system,
    String code,
    String finding,
    @Nullable String site,
    @Nullable Side side,
    @Nullable String unit,
    @Nullable Map<String, String> values,
    @Nullable Map<String, String> units) {

  public CodeRow {
    Objects.requireNonNull(code, "a row without a code");
    Objects.requireNonNull(finding, "a row without a finding");
  }
}
