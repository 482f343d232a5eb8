package org.driftward.ingest.core.narrative;

import java.util.List;

/** The tokens of one text with the numbers that begin at each of them, read once. */
final class Line {

  private final List<Token> tokens;
  private final Numeral[] numerals;

  Line(List<Token> tokens, NumberReader reader) {
    this.tokens = List.copyOf(tokens);
    this.numerals = new Numeral[tokens.size()];
    for (int i = 0; i < numerals.length; i++) {
      numerals[i] = reader.at(this.tokens, i);
    }
  }

  int size() {
    return tokens.size();
  }

  Token token(int at) {
    return tokens.get(at);
  }

  boolean is(int at, String text) {
    return at >= 0 && at < size() && token(at).is(text);
  }

  boolean reads(int at, List<String> words) {
    for (int i = 0; i < words.size(); i++) {
      if (!is(at + i, words.get(i))) {
        return false;
      }
    }
    return true;
  }

  /** Null where no number begins. */
  Numeral numeral(int at) {
    return at < size() ? numerals[at] : null;
  }

  /** Whether a phrase may leave it out: a word that is no number. */
  boolean skippable(int at) {
    return at < size() && token(at).isWord() && numerals[at] == null;
  }
}
