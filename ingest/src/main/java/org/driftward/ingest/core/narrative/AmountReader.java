package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Reads a number with its unit, scale and plus signs: "2+", "five out of five", "five foot six".
 */
final class AmountReader {

  /** Units that are said with a smaller one, and how many of it make one. */
  private static final Map<String, Small> COMPOUND =
      Map.of(
          "[ft_i]", new Small("[in_i]", 12),
          "[stone_av]", new Small("[lb_av]", 14));

  private static final Set<String> RANGES = Set.of("to", "-", "or", "\u2013", "till");
  private static final Set<String> HEARD_AS_TWO = Set.of("to", "too");

  private record Small(String unit, int parts) {}

  private final Lexicon units;

  AmountReader(Lexicon units) {
    this.units = units;
  }

  /** Null where no number begins. */
  @Nullable Amount at(Line line, int at) {
    if (HEARD_AS_TWO.contains(line.token(at).text())
        && line.is(at + 1, "plus")
        && (at == 0 || !endsNumber(line, at - 1))) {
      var two = new Numeral(at, at + 1, BigDecimal.valueOf(2));
      return new Amount(two, at, at + 2, null, null, true, true);
    }
    if (plus(line, at)) {
      int signs = at;
      while (line.is(signs, "+")) {
        signs++;
      }
      var number = line.numeral(signs);
      if (number == null && line.is(at, "plus") && line.numeral(at + 1) != null) {
        number = line.numeral(at + 1);
      }
      if (number == null) {
        return signs - at > 1 ? signs(at, signs) : null;
      }
      var amount = withRest(line, number);
      return new Amount(number, at, amount.end(), null, amount.scale(), amount.exact(), true);
    }
    var number = line.numeral(at);
    return number == null ? null : withRange(line, withRest(line, number));
  }

  private static Amount signs(int at, int end) {
    return new Amount(
        new Numeral(at, end, BigDecimal.valueOf(end - at)), at, end, null, null, true, true);
  }

  private Amount withRest(Line line, Numeral number) {
    int end = number.end();
    boolean exact = !number.doubtful();
    boolean plus = false;
    if (plus(line, end)) {
      plus = true;
      end++;
    } else if (line.is(end, "minus") || (line.is(end, "-") && line.is(end + 1, "/"))) {
      exact = false;
      end++;
    }
    Integer scale = null;
    int over = line.is(end, "/") ? end + 1 : line.is(end, "out") ? end + 2 : -1;
    if (over < 0 && line.is(end, "of")) {
      over = end + 1;
    }
    if (over > 0 && line.numeral(over) != null && line.numeral(over).whole()) {
      var top = line.numeral(over);
      scale = top.value().intValue();
      end = top.end();
      // "4+/5" is neither 4 nor 5.
      exact &= !plus || scale != 5;
    }
    String unit = null;
    var hit = end < line.size() ? units.at(line, end) : null;
    if (hit != null) {
      unit = hit.meaning().unit;
      end = hit.match().end();
      var small = COMPOUND.get(unit);
      var more = small == null ? null : line.numeral(end);
      if (more != null && more.value().intValue() < small.parts()) {
        var parts = number.value().multiply(BigDecimal.valueOf(small.parts())).add(more.value());
        end = more.end();
        var smallUnit = end < line.size() ? units.at(line, end) : null;
        if (smallUnit != null && small.unit().equals(smallUnit.meaning().unit)) {
          end = smallUnit.match().end();
        }
        return new Amount(
            new Numeral(number.first(), end, parts),
            number.first(),
            end,
            small.unit(),
            null,
            exact,
            false);
      }
    }
    return new Amount(number, number.first(), end, unit, scale, exact, plus);
  }

  /** "2 to 3 seconds": the whole range, as nothing exact. */
  private Amount withRange(Line line, Amount low) {
    int end = low.end();
    if (end >= line.size() || !RANGES.contains(line.token(end).text())) {
      return low;
    }
    boolean heardAsTwo = line.is(end, "to") && line.is(end + 1, "plus");
    var number = heardAsTwo ? null : line.numeral(end + 1);
    if (number == null) {
      return low;
    }
    var high = withRest(line, number);
    return new Amount(
        low.number(),
        low.first(),
        high.end(),
        low.unit() == null ? high.unit() : low.unit(),
        low.scale() == null ? high.scale() : low.scale(),
        false,
        low.plus());
  }

  private static boolean plus(Line line, int at) {
    return line.is(at, "+") || line.is(at, "plus");
  }

  private static boolean endsNumber(Line line, int at) {
    for (int back = at; back >= Math.max(0, at - 4); back--) {
      var number = line.numeral(back);
      if (number != null && number.end() == at + 1) {
        return true;
      }
    }
    return false;
  }
}
