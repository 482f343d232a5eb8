package org.driftward.ingest.core.derive;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.Derivations;
import org.driftward.ingest.contract.Finding;

/** Every derivation that ships, in the order of the catalogue. */
public final class StandardDerivations implements Derivations {

  /** One rule: adds what follows, or a question, or nothing. */
  interface Derivation {
    void derive(Together together, List<Derived> derived, List<Question> questions);
  }

  /**
   * @param gives code of the finding that it derives
   */
  private record Rule(String gives, Derivation derivation) {}

  private static final List<Rule> RULES =
      List.of(
          new Rule("mean-arterial-pressure", Pressures::mean),
          new Rule("pulse-pressure", Pressures::pulse),
          new Rule("gcs-total", Glasgow::total),
          new Rule("consciousness", Consciousness::derive),
          new Rule("pupil-difference", Pupils::derive),
          new Rule("pulse-deficit", PulseDeficit::derive));

  public static final StandardDerivations ALL = new StandardDerivations(RULES);

  private final List<Rule> rules;

  private StandardDerivations(List<Rule> rules) {
    this.rules = rules;
  }

  public static StandardDerivations of(Set<String> codes) {
    return new StandardDerivations(
        RULES.stream().filter(rule -> codes.contains(rule.gives())).toList());
  }

  @Override
  public Result from(Collection<Finding> findings) {
    var together = new Together(findings);
    var derived = new ArrayList<Derived>();
    var questions = new ArrayList<Question>();
    rules.forEach(rule -> rule.derivation().derive(together, derived, questions));
    return new Result(derived, questions);
  }
}
