package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Cuts a text into tokens. Letters and digits are cut apart ("45ml", "x4"), a hyphen inside a word
 * joins nothing ("non-tender"), and a word gets one spelling, so that US and British words meet.
 */
final class Tokeniser {

  /** Possessive, so that no text makes it go back. */
  private static final Pattern TOKEN =
      Pattern.compile(
          "\\d{1,3}(?:,\\d{3})++(?!\\d)|\\d++(?:\\.\\d++)?+|\\.\\d++|\\p{L}[\\p{L}\\p{M}]*+"
              + "(?:['\u2019]\\p{L}++)?+|\\.{2,}+|\\R|\\S");

  /** Longer numbers are nothing anybody examined. */
  private static final int MOST_DIGITS = 12;

  private final Map<String, String> spellings;

  Tokeniser(Map<String, String> spellings) {
    this.spellings = Map.copyOf(spellings);
  }

  List<Token> tokens(String text) {
    var tokens = new ArrayList<Token>();
    var matcher = TOKEN.matcher(text);
    while (matcher.find()) {
      var raw = matcher.group();
      if (raw.equals("-") && inWord(text, matcher.start())) {
        continue;
      }
      int last = tokens.isEmpty() ? -1 : tokens.get(tokens.size() - 1).to();
      tokens.add(
          new Token(
              spelled(raw), matcher.start(), matcher.end(), number(raw), last == matcher.start()));
    }
    return tokens;
  }

  private static boolean inWord(String text, int at) {
    return at > 0
        && at + 1 < text.length()
        && Character.isLetter(text.charAt(at + 1))
        && Character.isLetterOrDigit(text.charAt(at - 1));
  }

  private static BigDecimal number(String raw) {
    boolean digits = Character.isDigit(raw.charAt(raw.length() - 1));
    if (!digits || raw.length() > MOST_DIGITS || !raw.chars().allMatch(c -> c < 128)) {
      return null;
    }
    return new BigDecimal(raw.replace(",", ""));
  }

  private String spelled(String raw) {
    if ((raw.chars().allMatch(c -> c == '.') && raw.length() > 1) || raw.equals("\u2026")) {
      return "...";
    }
    if (Character.isWhitespace(raw.charAt(0))) {
      return "\n";
    }
    var lower = raw.toLowerCase(Locale.ROOT).replace('\u2019', '\'');
    return spellings.getOrDefault(lower, lower);
  }
}
