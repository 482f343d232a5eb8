package org.driftward.ingest.contract;

import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.driftward.ingest.core.derive.StandardDerivations;

/**
 * Findings that follow from others by a published formula. A pure function; thread-safe.
 *
 * <p>A recorded finding is never computed over: whoever measured knows better.
 */
@FunctionalInterface
public interface Derivations {

  /**
   * @param together findings of one assessment, so that they are of one time; no key twice
   * @return what follows, and what would follow if somebody answered a question
   */
  Result from(Collection<Finding> together);

  static Derivations standard() {
    return StandardDerivations.ALL;
  }

  /** Only those of the standard ones that give a finding of one of these codes. */
  static Derivations standard(Set<String> codes) {
    return StandardDerivations.of(codes);
  }

  /** Both in a fixed order. */
  record Result(List<Derived> derived, List<Question> questions) {
    public Result {
      derived = List.copyOf(derived);
      questions = List.copyOf(questions);
    }
  }

  /**
   * A computed finding.
   *
   * @param formula with this patient's numbers, for example {@code (120 + 2 x 80) / 3 mm[Hg]}
   * @param source where the formula was published
   * @param from the findings it was computed from
   */
  record Derived(Finding finding, String formula, String source, List<FindingKey> from) {
    public Derived {
      Objects.requireNonNull(finding, "finding");
      Objects.requireNonNull(formula, "formula");
      Objects.requireNonNull(source, "source");
      from = List.copyOf(from);
    }
  }

  /**
   * Something that the recorded findings suggest and no published rule settles.
   *
   * @param code the finding that somebody should record
   * @param words why, for people
   * @param from the findings that raise the question
   */
  record Question(String code, String words, List<FindingKey> from) {
    public Question {
      Objects.requireNonNull(code, "code");
      Objects.requireNonNull(words, "words");
      from = List.copyOf(from);
    }
  }
}
