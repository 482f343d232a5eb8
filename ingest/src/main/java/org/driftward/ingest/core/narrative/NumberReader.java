package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/**
 * Reads numbers in digits and in words as they are said at the bedside: "one hundred and four",
 * "one ten", "one oh four", "thirty eight point four", "two and a half".
 *
 * <p>Two numbers side by side without a word between have two readings and are marked as doubtful.
 */
final class NumberReader {

  private static final int HUNDRED = 100;
  private static final BigDecimal HALF = new BigDecimal("0.5");

  /** Said before another number, these mean hundreds: "one ten", "two twenty". */
  private static final int MOST_HUNDREDS = 3;

  private final Map<String, Integer> words;
  private final Map<String, Integer> misheard;

  /**
   * @param words of the numbers from 0 to 19, the tens, and "hundred"
   * @param misheard words that are a number right after a ten: "ninety ate"
   */
  NumberReader(Map<String, Integer> words, Map<String, Integer> misheard) {
    this.words = Map.copyOf(words);
    this.misheard = Map.copyOf(misheard);
  }

  /** Null where no number begins. */
  Numeral at(List<Token> tokens, int at) {
    var token = tokens.get(at);
    if (token.number() != null) {
      return clock(tokens, at) ? null : digits(tokens, at);
    }
    if (token.is("half")) {
      int end = at + 1 < tokens.size() && tokens.get(at + 1).is("a") ? at + 2 : at + 1;
      return new Numeral(at, end, HALF);
    }
    if (token.is("a") && word(tokens, at + 1) == HUNDRED) {
      return spoken(tokens, at, at + 1);
    }
    return word(tokens, at) >= 0 && word(tokens, at) != HUNDRED ? spoken(tokens, at, at) : null;
  }

  private Numeral digits(List<Token> tokens, int at) {
    var value = tokens.get(at).number();
    int end = at + 1;
    if (is(tokens, end, "point") && digit(tokens, end + 1) >= 0) {
      return decimals(tokens, at, end + 1, value);
    }
    Integer tail = null;
    // "temp 37 2", as some dictation writes it.
    if (value.scale() <= 0 && value.intValue() > 9 && end < tokens.size()) {
      var next = tokens.get(end).number();
      if (next != null && next.scale() <= 0 && next.intValue() < 10 && !clock(tokens, end)) {
        tail = next.intValue();
      }
    }
    if (tail != null && !countable(tokens, end + 1)) {
      return new Numeral(at, end + 1, value, tail, false);
    }
    return new Numeral(at, end, value, null, besideAnother(tokens, end));
  }

  private Numeral spoken(List<Token> tokens, int first, int at) {
    int value = word(tokens, at);
    int end = at + 1;
    boolean hundreds = false;
    if (value == HUNDRED) {
      hundreds = true;
    } else if (value > 0 && value < 10 && word(tokens, end) == HUNDRED) {
      value *= HUNDRED;
      end++;
      hundreds = true;
    } else if (value > 0 && value <= MOST_HUNDREDS) {
      int more = belowHundred(tokens, end);
      if (more >= 10) {
        return closed(tokens, first, groupEnd(tokens, end), value * HUNDRED + more);
      }
      if ((is(tokens, end, "oh") || is(tokens, end, "o") || word(tokens, end) == 0)
          && digit(tokens, end + 1) > 0) {
        return closed(tokens, first, end + 2, value * HUNDRED + digit(tokens, end + 1));
      }
    } else if (value >= 10) {
      int group = belowHundred(tokens, at);
      end = groupEnd(tokens, at);
      value = group;
    }
    if (hundreds) {
      int rest = is(tokens, end, "and") ? end + 1 : end;
      int more = belowHundred(tokens, rest);
      if (more >= 0) {
        value += more;
        end = groupEnd(tokens, rest);
      }
    }
    return closed(tokens, first, end, value);
  }

  /** With what may follow a whole number: decimals, a half, a digit that may be a decimal. */
  private Numeral closed(List<Token> tokens, int first, int end, int whole) {
    var value = BigDecimal.valueOf(whole);
    if (is(tokens, end, "point") && digit(tokens, end + 1) >= 0) {
      return decimals(tokens, first, end + 1, value);
    }
    if (is(tokens, end, "and") && is(tokens, end + 1, "a") && is(tokens, end + 2, "half")) {
      return new Numeral(first, end + 3, value.add(HALF));
    }
    int next = digit(tokens, end);
    if (whole >= 10 && next >= 0 && !countable(tokens, end + 1)) {
      return new Numeral(first, end + 1, value, next, false);
    }
    return new Numeral(first, end, value, null, besideAnother(tokens, end) && next < 0);
  }

  private Numeral decimals(List<Token> tokens, int first, int at, BigDecimal whole) {
    var text = new StringBuilder();
    int end = at;
    if (tokens.get(at).number() != null) {
      text.append(tokens.get(at).text());
      end++;
    } else {
      int group = belowHundred(tokens, at);
      if (group >= 10) {
        text.append(group);
        end = groupEnd(tokens, at);
      } else {
        while (text.length() < 2 && digit(tokens, end) >= 0) {
          text.append(digit(tokens, end));
          end++;
        }
      }
    }
    if (text.indexOf(".") >= 0 || text.length() > 3) {
      return new Numeral(first, end, whole, null, true);
    }
    return new Numeral(first, end, whole.add(new BigDecimal("0." + text)));
  }

  /** Whether a digit there begins something of its own: "ninety five two litres", "4 2+". */
  private boolean countable(List<Token> tokens, int at) {
    if (at >= tokens.size()) {
      return false;
    }
    var token = tokens.get(at);
    return COUNTED.contains(token.text()) || token.number() != null || word(tokens, at) >= 0;
  }

  private static final java.util.Set<String> COUNTED =
      java.util.Set.of(
          "litre",
          "litres",
          "l",
          "lpm",
          "plus",
          "+",
          "out",
          "/",
          "over",
          "mm",
          "ml",
          "mls",
          "second",
          "seconds",
          "sec",
          "secs",
          "s",
          "hour",
          "hours",
          "day",
          "days",
          "millimetre",
          "millimetres",
          "left",
          "right",
          "of",
          "point",
          "hundred");

  private boolean besideAnother(List<Token> tokens, int at) {
    return at < tokens.size()
        && ((tokens.get(at).number() != null && !clock(tokens, at))
            || (word(tokens, at) >= 10 && word(tokens, at) != HUNDRED));
  }

  /** -1 where there is none. */
  private int belowHundred(List<Token> tokens, int at) {
    int value = word(tokens, at);
    if (value < 0 || value >= HUNDRED) {
      return -1;
    }
    int unit = value >= 20 ? unitAfterTen(tokens, at + 1) : 0;
    return value + Math.max(0, unit);
  }

  private int groupEnd(List<Token> tokens, int at) {
    return word(tokens, at) >= 20 && unitAfterTen(tokens, at + 1) > 0 ? at + 2 : at + 1;
  }

  private int unitAfterTen(List<Token> tokens, int at) {
    if (at >= tokens.size()) {
      return -1;
    }
    var wrong = misheard.get(tokens.get(at).text());
    int value = wrong == null ? word(tokens, at) : wrong;
    return value < 10 ? value : -1;
  }

  /** From 0 to 9, in words, "oh" for zero; -1 where there is none. */
  private int digit(List<Token> tokens, int at) {
    if (is(tokens, at, "oh")) {
      return 0;
    }
    if (at < tokens.size() && tokens.get(at).number() != null) {
      var number = tokens.get(at).number();
      return number.scale() <= 0 ? number.intValue() : -1;
    }
    int value = word(tokens, at);
    return value < 10 ? value : -1;
  }

  private int word(List<Token> tokens, int at) {
    return at < tokens.size() ? words.getOrDefault(tokens.get(at).text(), -1) : -1;
  }

  private static boolean is(List<Token> tokens, int at, String text) {
    return at < tokens.size() && tokens.get(at).is(text);
  }

  /** A part of "14:30". */
  private static boolean clock(List<Token> tokens, int at) {
    return (colon(tokens, at + 1) && tokens.size() > at + 2 && tokens.get(at + 2).number() != null)
        || (at > 1 && colon(tokens, at - 1) && tokens.get(at - 2).number() != null);
  }

  private static boolean colon(List<Token> tokens, int at) {
    return at < tokens.size()
        && tokens.get(at).is(":")
        && tokens.get(at).glued()
        && at + 1 < tokens.size()
        && tokens.get(at + 1).glued();
  }
}
