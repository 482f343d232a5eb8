package org.driftward.ingest.contract;

import java.util.LinkedHashMap;
import java.util.Map;

/** The constants of each {@link Word} enum by their words, made once for each enum. */
final class Words {

  private static final ClassValue<Map<String, Word>> BY_TYPE =
      new ClassValue<>() {
        @Override
        protected Map<String, Word> computeValue(Class<?> type) {
          var words = new LinkedHashMap<String, Word>();
          for (var constant : type.getEnumConstants()) {
            var word = (Word) constant;
            words.put(word.word(), word);
          }
          return words;
        }
      };

  private Words() {}

  /** In the order of the enum. */
  static Map<String, Word> of(Class<? extends Word> type) {
    return BY_TYPE.get(type);
  }
}
