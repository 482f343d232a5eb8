package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A word, a number in digits or a sign.
 *
 * @param text lower case, in one spelling; a line break is {@code \n}
 * @param from offset in the text, UTF-16 code units
 * @param to exclusive
 * @param number the value of digits; null for all else
 * @param glued whether it follows the token before without a space
 */
record Token(String text, int from, int to, @Nullable BigDecimal number, boolean glued) {

  boolean is(String other) {
    return text.equals(other);
  }

  boolean isWord() {
    return Character.isLetter(text.charAt(0));
  }

  /** A full stop, question mark, line break: what ends a sentence. */
  boolean endsSentence() {
    return is(".") || is("?") || is("!") || is("\n");
  }
}
