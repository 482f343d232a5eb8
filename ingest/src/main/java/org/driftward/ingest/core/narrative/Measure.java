package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.core.UnitConversion;
import org.jspecify.annotations.Nullable;

/** Whether a number can be a value of a finding, and which. */
final class Measure {

  private static final String FLOW = "L/min";
  private static final String FAHRENHEIT = "[degF]";

  private final UnitConversion conversion;

  Measure(UnitConversion conversion) {
    this.conversion = conversion;
  }

  /**
   * @param value null where the number cannot be recorded
   * @param offers what may have been meant
   */
  record Fit(@Nullable FindingValue value, List<FindingValue> offers) {
    static final Fit ASK = new Fit(null, List.of());
  }

  /** Null where the number is of something else. */
  @Nullable Fit of(CatalogueEntry entry, boolean needsUnit, Amount amount) {
    if (entry.kind() == Kind.GRADE) {
      return grade(entry, amount);
    }
    if (entry.kind() != Kind.QUANTITY || amount.scale() != null || amount.plus()) {
      return null;
    }
    var number = amount.number();
    var said = amount.unit();
    if (said == null) {
      return needsUnit ? null : implied(entry, amount);
    }
    if (said.equals("L") && entry.unit().equals(FLOW)) {
      said = FLOW;
    }
    var decimals = decimals(entry) ? number.withTail() : number.value();
    var converted =
        said.equals(entry.unit())
            ? decimals
            : conversion.convert(decimals, said, entry.unit()).orElse(null);
    if (converted == null) {
      return null;
    }
    var value = said.equals(entry.unit()) ? converted : converted.setScale(1, RoundingMode.HALF_UP);
    return exact(entry, amount) && accepted(entry, value) ? fit(entry, value) : Fit.ASK;
  }

  private Fit implied(CatalogueEntry entry, Amount amount) {
    var value = decimals(entry) ? amount.number().withTail() : amount.number().value();
    if (!exact(entry, amount)) {
      return Fit.ASK;
    }
    if (accepted(entry, value)) {
      return fit(entry, value);
    }
    var offers = new ArrayList<FindingValue>();
    if (entry.unit().equals("Cel")) {
      conversion
          .convert(value, FAHRENHEIT, entry.unit())
          .map(cel -> cel.setScale(1, RoundingMode.HALF_UP))
          .filter(cel -> accepted(entry, cel))
          .ifPresent(cel -> offers.add(new FindingValue.Quantity(cel, entry.unit())));
    }
    return new Fit(null, offers);
  }

  private static Fit grade(CatalogueEntry entry, Amount amount) {
    int high = entry.accepted().high().intValue();
    if (amount.unit() != null || (amount.scale() != null && amount.scale() != high)) {
      return null;
    }
    var value = amount.number().value();
    boolean fits =
        amount.exact()
            && amount.number().tail() == null
            && amount.number().whole()
            && entry.accepted().holds(value);
    return fits ? new Fit(new FindingValue.Grade(value.intValueExact()), List.of()) : Fit.ASK;
  }

  /** A digit said after the number is a decimal only where the finding has decimals. */
  private static boolean decimals(CatalogueEntry entry) {
    return entry.unit() != null && entry.unit().equals("Cel");
  }

  private static boolean exact(CatalogueEntry entry, Amount amount) {
    return amount.exact() && (amount.number().tail() == null || decimals(entry));
  }

  private static boolean accepted(CatalogueEntry entry, BigDecimal value) {
    return FindingValue.Quantity.fits(value)
        && (entry.accepted() == null || entry.accepted().holds(value));
  }

  private static Fit fit(CatalogueEntry entry, BigDecimal value) {
    return new Fit(new FindingValue.Quantity(value, entry.unit()), List.of());
  }
}
