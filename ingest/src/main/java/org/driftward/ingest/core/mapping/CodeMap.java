package org.driftward.ingest.core.mapping;

import java.util.List;
import java.util.Optional;

/**
 * What foreign codes and unit words mean. Thread-safe; an answer may change while the house runs.
 */
public interface CodeMap {

  /** Empty if the code means no finding that we know; then it is reported, never guessed. */
  Optional<Meaning> find(ForeignCode code);

  /** The UCUM unit that a word of the trade means, for example {@code /min} for {@code bpm}. */
  Optional<String> unit(String word);

  /** Asks one map after the other; the first that knows decides. */
  static CodeMap firstOf(List<CodeMap> maps) {
    var inOrder = List.copyOf(maps);
    return new CodeMap() {
      @Override
      public Optional<Meaning> find(ForeignCode code) {
        return inOrder.stream().flatMap(map -> map.find(code).stream()).findFirst();
      }

      @Override
      public Optional<String> unit(String word) {
        return inOrder.stream().flatMap(map -> map.unit(word).stream()).findFirst();
      }
    };
  }
}
