package org.driftward.scoring.contract;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Numbers, units and times as people read them. */
public final class Plain {

  private static final Map<String, String> UNITS =
      Map.of("mm[Hg]", "mmHg", "Cel", "°C", "{score}", "");

  private Plain() {}

  /** A UCUM unit with a space before it, to stand after a number; empty where there is none. */
  public static String unit(@Nullable String ucum) {
    var plain = ucum == null ? "" : UNITS.getOrDefault(ucum, ucum);
    return plain.isEmpty() ? "" : " " + plain;
  }

  /** With at most {@code decimals} decimals and no trailing zeros: 37, 0.5, 112. */
  public static String number(double value, int decimals) {
    var rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    var stripped = rounded.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }

  /**
   * A rate of change without its sign: two decimals, or as many as show two digits, so that a slow
   * change never reads as none: 2, 0.25, 0.0042.
   */
  public static String rate(double value) {
    double size = Math.abs(value);
    int decimals = size == 0 ? 0 : Math.max(2, 1 - (int) Math.floor(Math.log10(size)));
    return number(size, decimals);
  }

  /** In hours and minutes: {@code 2 h 5 min}, {@code 40 min}. */
  public static String time(Duration duration) {
    long minutes = Math.round(duration.toMillis() / 60_000.0);
    long hours = minutes / 60;
    if (hours == 0) {
      return minutes + " min";
    }
    return minutes % 60 == 0 ? hours + " h" : hours + " h " + minutes % 60 + " min";
  }
}
