package org.driftward.scoring.contract;

import java.util.List;
import java.util.Optional;

/** The guides of the definitions in force, leading ones first. */
public record ScoreGuides(List<ScoreGuide> all) {

  public ScoreGuides {
    all = List.copyOf(all);
  }

  /**
   * What the class of risk of a score asks for, by its source or local policy; empty where nothing
   * is known. Of two classes of one name the first is that of a score with points, the last of
   * none.
   */
  public Optional<String> response(Score score) {
    var named =
        all.stream()
            .filter(guide -> guide.id().equals(score.id()))
            .flatMap(guide -> guide.risks().stream())
            .filter(risk -> risk.id().equals(score.risk()))
            .toList();
    return named.isEmpty()
        ? Optional.empty()
        : Optional.of(named.get(score.low().signum() > 0 ? 0 : named.size() - 1).response());
  }
}
