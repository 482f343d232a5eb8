package org.driftward.ingest.core.mapping;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.driftward.ingest.contract.ForeignCode;

/**
 * What foreign codes, answers and unit words mean. Thread-safe; an answer may change while the
 * house runs. Names of coding systems are taken in every standard's spelling, see {@link Systems}.
 */
public interface CodeMap {

  /** Empty if the code means no finding that we know; then it is reported, never guessed. */
  Optional<Meaning> find(ForeignCode code);

  /** The UCUM unit that a word of the trade means, for example {@code /min} for {@code bpm}. */
  Optional<String> unit(String word);

  /** The option of the finding that an answer with a code of its own means. */
  Optional<String> answer(String system, String code, String finding);

  /** Whether the code only holds others together and carries no value itself. */
  boolean isPanel(String system, String code);

  /** Asks one map after the other; the first that knows decides. */
  static CodeMap firstOf(List<CodeMap> maps) {
    var inOrder = List.copyOf(maps);
    return new CodeMap() {
      private <T> Optional<T> first(Function<CodeMap, Optional<T>> question) {
        return inOrder.stream().flatMap(map -> question.apply(map).stream()).findFirst();
      }

      @Override
      public Optional<Meaning> find(ForeignCode code) {
        return first(map -> map.find(code));
      }

      @Override
      public Optional<String> unit(String word) {
        return first(map -> map.unit(word));
      }

      @Override
      public Optional<String> answer(String system, String code, String finding) {
        return first(map -> map.answer(system, code, finding));
      }

      @Override
      public boolean isPanel(String system, String code) {
        return inOrder.stream().anyMatch(map -> map.isPanel(system, code));
      }
    };
  }
}
