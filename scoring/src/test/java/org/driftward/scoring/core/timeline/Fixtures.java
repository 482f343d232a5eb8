package org.driftward.scoring.core.timeline;

import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.definition.ScoreBooks;
import org.driftward.scoring.policy.PolicyFile;

/** The shipped catalogue, scores and policy, put together. */
public final class Fixtures {

  public static final Catalogue CATALOGUE = Catalogue.shipped();

  private static final Judge JUDGE =
      new Judge(CATALOGUE, ScoreBooks.shipped(CATALOGUE), PolicyFile.shipped());

  private Fixtures() {}

  public static Judge judge() {
    return JUDGE;
  }

  /** A timeline that keeps checkpoints so often that short histories have several. */
  public static Timeline timeline() {
    return new Timeline(Rules.always(JUDGE), 3);
  }
}
