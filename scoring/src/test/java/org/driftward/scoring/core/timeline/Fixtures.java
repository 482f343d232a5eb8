package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.policy.Restart;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.score.ScoreBook;
import org.driftward.scoring.definition.ScoreBooks;
import org.driftward.scoring.edition.EditionFile;
import org.driftward.scoring.edition.EditionsInForce;
import org.driftward.scoring.policy.PolicyFile;

/** The shipped catalogue, scores and policy, put together; and editions that differ from them. */
public final class Fixtures {

  public static final Catalogue CATALOGUE = Catalogue.shipped();

  /** The ward's own score, no source: one point for a pulse of 80 or more. */
  private static final String PULSE =
      """
      id: pulse
      title: Pulse
      version: "%s"
      rank: 200
      source: "the ward's own, no source"
      applies-to: {}
      shown: begun
      inputs: [{code: heart-rate, unit: /min, digits: 0}]
      rows:
        - input: heart-rate
          row: Pulse
          bands: [{below: %d, points: 0}, {from: %d, points: 1}]
      risks: [{id: any, response: local policy}]
      """;

  private static final ScoreBook BOOK = ScoreBooks.shipped(CATALOGUE);
  private static final Judge JUDGE = new Judge(CATALOGUE, BOOK, PolicyFile.shipped());

  private Fixtures() {}

  public static Judge judge() {
    return JUDGE;
  }

  /** What is shipped, and nothing adopted. */
  public static EditionsInForce editions() {
    return new EditionsInForce(CATALOGUE, BOOK, PolicyFile.shipped());
  }

  /** The shipped settings with a score of the ward's own, which counts a pulse from a limit on. */
  public static EditionFile pulseFrom(int limit, String version, Instant from) {
    var score = PULSE.formatted(version, limit, limit);
    return new EditionFile(from, "version: " + version, List.of(score), null, null);
  }

  public static Edition edition(int limit, String version, Instant from) {
    return editions().read(pulseFrom(limit, version, from));
  }

  /** Under the shipped policy, but that only these documented changes begin a new quiet period. */
  static Timeline restartingOn(Restart... changes) {
    var shipped = PolicyFile.shipped();
    var policy =
        new ScoringPolicy(
            shipped.version(),
            shipped.validity(),
            shipped.spacing(),
            shipped.quiet(),
            shipped.drift(),
            shipped.trend(),
            shipped.level(),
            Set.of(changes),
            shipped.observations(),
            shipped.urgent(),
            shipped.rates());
    return new Timeline(Editions.only(new Judge(CATALOGUE, BOOK, policy)), 3);
  }

  /** A timeline that keeps checkpoints so often that short histories have several. */
  public static Timeline timeline() {
    return new Timeline(Editions.only(JUDGE), 3);
  }
}
