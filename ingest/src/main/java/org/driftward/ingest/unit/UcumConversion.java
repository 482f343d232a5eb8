package org.driftward.ingest.unit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import javax.measure.IncommensurableException;
import javax.measure.UnconvertibleException;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import javax.measure.format.MeasurementParseException;
import systems.uom.ucum.format.UCUMFormat;
import systems.uom.ucum.internal.format.TokenException;
import systems.uom.ucum.internal.format.TokenMgrError;

/**
 * Converts between UCUM units, case-sensitive codes ({@code Cel}, {@code [degF]}, {@code mm[Hg]},
 * {@code kPa}). Thread-safe.
 *
 * <p>A unit that is not UCUM, or not of the same dimension, is never guessed at.
 */
public final class UcumConversion {

  /** Finer than any bedside measurement, and coarse enough to swallow binary rounding. */
  private static final int DECIMALS = 6;

  private static final UCUMFormat FORMAT =
      UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE);

  private final Map<String, Optional<UnitConverter>> converters = new ConcurrentHashMap<>();

  /**
   * The value in the other unit, rounded half up to six decimals; the value itself when the units
   * are the same.
   *
   * @return empty if there is no conversion
   */
  public Optional<BigDecimal> convert(BigDecimal value, String from, String to) {
    if (from.equals(to)) {
      return Optional.of(value);
    }
    // Only pairs that convert are kept: what a stranger sends must not fill the memory.
    var known = converters.get(from + " -> " + to);
    var converter = known != null ? known : converter(from, to);
    if (known == null && converter.isPresent()) {
      converters.put(from + " -> " + to, converter);
    }
    return converter.map(found -> rounded(found.convert(value)));
  }

  private static Optional<UnitConverter> converter(String from, String to) {
    try {
      Unit<?> source = parse(from);
      return Optional.of(source.getConverterToAny(parse(to)));
    } catch (MeasurementParseException
        | TokenException
        | TokenMgrError
        | IllegalArgumentException
        | IncommensurableException
        | UnconvertibleException e) {
      return Optional.empty();
    }
  }

  /** The format's parser is not documented as thread-safe. */
  private static synchronized Unit<?> parse(String unit) {
    if (unit.isBlank()) {
      throw new IllegalArgumentException("no unit");
    }
    return FORMAT.parse(unit);
  }

  private static BigDecimal rounded(Number value) {
    return new BigDecimal(value.toString())
        .setScale(DECIMALS, RoundingMode.HALF_UP)
        .stripTrailingZeros();
  }
}
