package org.driftward.ingest.core.derive;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.driftward.ingest.contract.Derivations;
import org.driftward.ingest.contract.Finding;

/** Every derivation that ships, in the order of the catalogue. */
public enum StandardDerivations implements Derivations {
  INSTANCE;

  /** One rule: adds what follows, or a question, or nothing. */
  interface Derivation {
    void derive(Together together, List<Derived> derived, List<Question> questions);
  }

  private static final List<Derivation> RULES =
      List.of(
          Pressures::mean,
          Pressures::pulse,
          Glasgow::total,
          Consciousness::derive,
          Pupils::derive,
          PulseDeficit::derive);

  @Override
  public Result from(Collection<Finding> findings) {
    var together = new Together(findings);
    var derived = new ArrayList<Derived>();
    var questions = new ArrayList<Question>();
    RULES.forEach(rule -> rule.derive(together, derived, questions));
    return new Result(derived, questions);
  }
}
