package org.driftward.ingest.core.mapping;

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
 */
public record Meaning(
    String finding,
    @Nullable String site,
    @Nullable Side side,
    @Nullable String unit,
    Map<String, String> values) {

  public Meaning {
    Objects.requireNonNull(finding, "finding");
    values = Map.copyOf(values);
  }

  public static Meaning of(String finding) {
    return new Meaning(finding, null, null, null, Map.of());
  }

  /** The option that an answer means, whatever its case. */
  public Optional<String> option(String answer) {
    return Optional.ofNullable(values.get(Answers.key(answer)));
  }
}
