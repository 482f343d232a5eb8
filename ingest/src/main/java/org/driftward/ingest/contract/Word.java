package org.driftward.ingest.contract;

import java.util.Locale;

/**
 * An enum constant that travels as a lower-case word: {@code RESPONSE_TEAM} is written {@code
 * response-team}. A reader refuses a word it does not know.
 */
public interface Word {

  String name();

  default String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Parses a word at the edge.
   *
   * @throws IllegalArgumentException naming the word and those that are allowed
   */
  static <E extends Enum<E> & Word> E parse(Class<E> type, String word) {
    var words = Words.of(type);
    var constant = words.get(word);
    if (constant == null) {
      throw new IllegalArgumentException(
          "\"" + word + "\" is none of: " + String.join(", ", words.keySet()));
    }
    return type.cast(constant);
  }
}
