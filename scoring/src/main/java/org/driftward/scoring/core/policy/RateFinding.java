package org.driftward.scoring.core.policy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.jspecify.annotations.Nullable;

/**
 * An amount over the hours it came in, both of the same assessment: 300 mL in 6 hours is 50 mL/h.
 * It has baseline, drift, trend and change rule like any finding of the catalogue; the amount alone
 * says nothing.
 *
 * @param code its own; not a code of the catalogue
 * @param amount code of the amount
 * @param hours code of the time it came in, in hours
 * @param unit UCUM, of the rate
 * @param change smallest worsening from the usual rate that counts, in {@code unit}
 * @param noise floor of the spread, in {@code unit}; null where no baseline is kept
 */
public record RateFinding(
    String code,
    String name,
    String amount,
    String hours,
    String unit,
    Worse worse,
    @Nullable BigDecimal change,
    @Nullable BigDecimal noise,
    @Nullable Group group,
    String source) {

  public RateFinding {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(amount, "amount");
    Objects.requireNonNull(hours, "hours");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(worse, "worse");
    Objects.requireNonNull(source, "source");
  }

  /** The same as an entry of the catalogue. */
  public CatalogueEntry entry() {
    return new CatalogueEntry(
        code,
        name,
        "derived",
        Kind.QUANTITY,
        unit,
        List.of(),
        false,
        null,
        null,
        null,
        List.of(),
        List.of(),
        worse,
        change,
        noise,
        group,
        source);
  }
}
