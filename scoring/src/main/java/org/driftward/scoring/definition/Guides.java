package org.driftward.scoring.definition;

import java.nio.file.Path;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.ScoreGuide;
import org.driftward.scoring.core.score.RiskClass;
import org.driftward.scoring.core.score.ScoreDefinition;
import org.driftward.scoring.core.score.Span;

/** Tells people about the definitions in force. */
public final class Guides {

  private Guides() {}

  /** As {@link ScoreGuide#inForce}. */
  public static List<ScoreGuide> read(List<Path> extra, Catalogue catalogue) {
    return ScoreBooks.read(extra, catalogue).definitions().stream().map(Guides::guide).toList();
  }

  private static ScoreGuide guide(ScoreDefinition definition) {
    return new ScoreGuide(
        definition.id(),
        definition.title(),
        definition.version(),
        definition.source(),
        definition.notes(),
        definition.applicability().notFor(),
        definition.risks().stream().map(Guides::risk).toList());
  }

  private static ScoreGuide.Risk risk(RiskClass risk) {
    return new ScoreGuide.Risk(risk.id(), when(risk), risk.response());
  }

  private static String when(RiskClass risk) {
    if (risk.single() > 0) {
      var single = risk.single() + " or more in one row";
      return risk.total().equals(Span.ALL) ? single : Spans.text(risk.total()) + ", " + single;
    }
    return risk.total().equals(Span.ALL) ? "otherwise" : Spans.text(risk.total());
  }
}
