package org.driftward.ingest.contract;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Values of one finding that call somebody by themselves, beside every score. Either words or
 * numbers; of numbers one end or two.
 *
 * @param level how urgent
 * @param is words of a coded finding
 * @param from this number and above, in the catalogue's unit
 * @param above more than this number
 * @param upto this number and below
 * @param below less than this number
 * @param age whom it holds for, or null for every age
 * @param source where it comes from, or {@code local policy}
 */
public record CallNow(
    Level level,
    List<String> is,
    @Nullable BigDecimal from,
    @Nullable BigDecimal above,
    @Nullable BigDecimal upto,
    @Nullable BigDecimal below,
    @Nullable Ages age,
    String source) {

  /** Completed years, both ends included; a null end is open. */
  public record Ages(@Nullable Integer from, @Nullable Integer upto) {
    boolean holds(int years) {
      return (from == null || years >= from) && (upto == null || years <= upto);
    }
  }

  public CallNow {
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(source, "source");
    is = is == null ? List.of() : List.copyOf(is);
    boolean numbers = from != null || above != null || upto != null || below != null;
    if (is.isEmpty() != numbers) {
      throw new IllegalArgumentException("call-now goes either by words or by numbers");
    }
    if ((from != null && above != null) || (upto != null && below != null)) {
      throw new IllegalArgumentException("call-now with two ends on one side");
    }
  }

  public boolean isFor(int years) {
    return age == null || age.holds(years);
  }

  public boolean holds(BigDecimal value) {
    return is.isEmpty()
        && (from == null || value.compareTo(from) >= 0)
        && (above == null || value.compareTo(above) > 0)
        && (upto == null || value.compareTo(upto) <= 0)
        && (below == null || value.compareTo(below) < 0);
  }

  /** How far a number that it holds for lies from the nearer edge, in the finding's unit. */
  public double beyond(BigDecimal value) {
    double edge = Double.POSITIVE_INFINITY;
    for (@Nullable BigDecimal end : new BigDecimal[] {from, above, upto, below}) {
      if (end != null) {
        edge = Math.min(edge, value.subtract(end).abs().doubleValue());
      }
    }
    return edge;
  }

  /** In words, for example {@code below 85}; of words, those words. */
  public String words() {
    if (!is.isEmpty()) {
      return String.join(" or ", is).replace('-', ' ');
    }
    var low = from != null ? "from " + plain(from) : above != null ? "above " + plain(above) : "";
    var high = upto != null ? "up to " + plain(upto) : below != null ? "below " + plain(below) : "";
    return low.isEmpty() || high.isEmpty() ? low + high : low + " and " + high;
  }

  private static String plain(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString();
  }
}
