package org.driftward.scoring.config;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Leaders;
import org.driftward.scoring.contract.Populations;
import org.driftward.scoring.contract.Preview;
import org.driftward.scoring.contract.ScoreGuide;
import org.driftward.scoring.contract.ScoreGuides;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.score.ScoreBook;
import org.driftward.scoring.definition.ScoreBooks;
import org.driftward.scoring.edition.EditionsInForce;
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
  ScoreGuides guides(ScoringConfig config, Catalogue catalogue) {
    return new ScoreGuides(ScoreGuide.inForce(config.scores().orElse(List.of()), catalogue));
  }

  @Produces
  @Singleton
  Leaders leaders(ScoreBook book) {
    return new Leaders(book.leaders());
  }

  @Produces
  @Singleton
  ScoringPolicy scoringPolicy(ScoringConfig config) {
    return config.policy().map(PolicyFile::read).orElseGet(PolicyFile::shipped);
  }

  @Produces
  @Singleton
  EditionsInForce editions(Catalogue catalogue, ScoreBook book, ScoringPolicy policy) {
    return new EditionsInForce(catalogue, book, policy);
  }

  /** In whatever role asks, under the editions then known: it needs no state of the topology. */
  @Produces
  @Singleton
  Preview preview(EditionsInForce editions) {
    return (known, draft) -> editions.timeline().preview().of(known, draft);
  }
}
