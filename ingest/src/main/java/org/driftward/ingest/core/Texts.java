package org.driftward.ingest.core;

import java.util.Optional;

/**
 * What a text must be before it enters the house. Control characters and lone surrogates cannot be
 * stored or written as UTF-8 by everything downstream, so they stop here.
 */
public final class Texts {

  static final int LONGEST_IDENTIFIER = 128;
  static final int LONGEST_NOTE = 4_000;

  private Texts() {}

  /** What is wrong with an identifier, name or other one-line text; empty if nothing. */
  public static Optional<String> faultOfLine(String text) {
    if (text.isBlank()) {
      return Optional.of("is blank");
    }
    if (text.length() > LONGEST_IDENTIFIER) {
      return Optional.of("is longer than " + LONGEST_IDENTIFIER + " characters");
    }
    if (!text.strip().equals(text)) {
      return Optional.of("begins or ends with a blank");
    }
    return faultOfCharacters(text, false);
  }

  /** What is wrong with a text of several lines; empty if nothing. */
  static Optional<String> faultOfNote(String text) {
    if (text.isBlank()) {
      return Optional.of("is blank");
    }
    if (text.length() > LONGEST_NOTE) {
      return Optional.of("is longer than " + LONGEST_NOTE + " characters");
    }
    return faultOfCharacters(text, true);
  }

  private static Optional<String> faultOfCharacters(String text, boolean lines) {
    for (int i = 0; i < text.length(); ) {
      int character = text.codePointAt(i);
      boolean lineBreak = character == '\n' || character == '\r' || character == '\t';
      if (Character.getType(character) == Character.SURROGATE) {
        return Optional.of("holds half of a surrogate pair");
      }
      if (Character.isISOControl(character) && !(lines && lineBreak)) {
        return Optional.of("holds a control character");
      }
      i += Character.charCount(character);
    }
    return Optional.empty();
  }
}
