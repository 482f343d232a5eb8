package org.driftward.alerts.core.trigger;

import java.math.BigDecimal;
import java.util.Map;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * How far values lie in the worse direction, in steps that count: the catalogue's {@code change},
 * else three times its noise (engineering choice: a drift of about that size counts too). Of two
 * values of one finding the worse has the larger distance; the number alone means nothing.
 */
record Distance(Catalogue catalogue) {

  private static final double NOISES = 3;

  /**
   * @return empty for what the catalogue does not know, for text, and where neither way is worse
   */
  Map<String, Double> of(String code, Scalar value) {
    return catalogue.find(code).map(entry -> of(entry, value)).orElse(Map.of());
  }

  /** How far apart two values are, whichever way. */
  double between(String code, Scalar from, Scalar to) {
    return catalogue.find(code).map(entry -> between(entry, from, to)).orElse(0.0);
  }

  private static Map<String, Double> of(CatalogueEntry entry, Scalar value) {
    @Nullable Double place = place(entry, value);
    if (place == null) {
      return Map.of();
    }
    return switch (entry.worse()) {
      case HIGHER -> Map.of("above", place);
      case LOWER -> Map.of("below", -place);
      case EITHER -> outside(entry, place);
      case NONE -> Map.of();
    };
  }

  /** Too low and too high are two things, and a patient may go from one to the other. */
  private static Map<String, Double> outside(CatalogueEntry entry, double place) {
    var expected = entry.expected();
    if (expected == null) {
      return Map.of();
    }
    double low = expected.low().doubleValue() / step(entry);
    double high = expected.high().doubleValue() / step(entry);
    return place > high
        ? Map.of("above", place - high)
        : place < low ? Map.of("below", low - place) : Map.of();
  }

  private static double between(CatalogueEntry entry, Scalar from, Scalar to) {
    @Nullable Double one = place(entry, from);
    @Nullable Double other = place(entry, to);
    return one == null || other == null ? 0 : Math.abs(other - one);
  }

  /** Where the value lies on the finding's own scale, in steps; null for words that it lacks. */
  private static @Nullable Double place(CatalogueEntry entry, Scalar value) {
    if (value.number() != null) {
      return value.number().doubleValue() / step(entry);
    }
    int option = entry.options().indexOf(value.plain());
    return option < 0 ? null : option / step(entry);
  }

  private static double step(CatalogueEntry entry) {
    @Nullable BigDecimal change = entry.change();
    if (change != null && change.signum() > 0) {
      return change.doubleValue();
    }
    return entry.noise() == null ? 1 : NOISES * entry.noise().doubleValue();
  }
}
