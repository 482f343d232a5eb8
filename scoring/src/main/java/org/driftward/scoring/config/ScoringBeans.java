package org.driftward.scoring.config;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Populations;
import org.driftward.scoring.contract.Preview;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.score.ScoreBook;
import org.driftward.scoring.core.timeline.Judge;
import org.driftward.scoring.core.timeline.Rules;
import org.driftward.scoring.core.timeline.Timeline;
import org.driftward.scoring.definition.ScoreBooks;
import org.driftward.scoring.policy.PolicyFile;

/** Turns the settings into the pure core, which knows no configuration. */
@Singleton
public class ScoringBeans {

  @Produces
  @Singleton
  ScoreBook scoreBook(ScoringConfig config, Catalogue catalogue) {
    return ScoreBooks.read(config.scores().orElse(List.of()), catalogue);
  }

  @Produces
  @Singleton
  Populations populations(ScoreBook book) {
    return new Populations(book.populations());
  }

  @Produces
  @Singleton
  ScoringPolicy scoringPolicy(ScoringConfig config) {
    return config.policy().map(PolicyFile::read).orElseGet(PolicyFile::shipped);
  }

  @Produces
  @Singleton
  Timeline timeline(Catalogue catalogue, ScoreBook book, ScoringPolicy policy) {
    return new Timeline(Rules.always(new Judge(catalogue, book, policy)));
  }

  /** In whatever role asks: it needs no state of the topology. */
  @Produces
  @Singleton
  Preview preview(Timeline timeline) {
    return timeline.preview();
  }
}
