package org.driftward.ingest.core.mapping;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/**
 * What a foreign code stands for.
 *
 * @param finding a code of the catalogue
 * @param site a site that the catalogue lists for the finding; null where the code does not say
 * @param side null where the code does not say
 * @param unit the UCUM unit that is meant where the sender names none; null where that is unknown,
 *     and then a value without a unit is refused
 * @param values the sender's answers, in lower case, and the option of the catalogue that each
 *     means
 * @param units the sender's words for units and the UCUM unit that each means
 */
public record Meaning(
    String finding,
    @Nullable String site,
    @Nullable Side side,
    @Nullable String unit,
    Map<String, String> values,
    Map<String, String> units) {

  public Meaning {
    Objects.requireNonNull(finding, "finding");
    values = Map.copyOf(values);
    units = Map.copyOf(units);
  }

  public static Meaning of(String finding) {
    return new Meaning(finding, null, null, null, Map.of(), Map.of());
  }

  static Meaning of(CodeRow row) {
    var byAnswer = new HashMap<String, String>();
    if (row.values() != null) {
      row.values().forEach((answer, option) -> byAnswer.put(Answers.key(answer), option));
    }
    return new Meaning(
        row.finding(),
        row.site(),
        row.side(),
        row.unit(),
        byAnswer,
        row.units() == null ? Map.of() : row.units());
  }

  /** The option that an answer means, whatever its case. */
  public Optional<String> option(String answer) {
    return Optional.ofNullable(values.get(Answers.key(answer)));
  }

  /** The UCUM unit that a word means with this code. */
  public Optional<String> ucum(String word) {
    return Optional.ofNullable(units.get(word));
  }
}
