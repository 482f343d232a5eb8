package org.driftward.scoring.edition;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.score.ScoreBook;
import org.driftward.scoring.core.timeline.Edition;
import org.driftward.scoring.core.timeline.Editions;
import org.driftward.scoring.core.timeline.Judge;
import org.driftward.scoring.core.timeline.Timeline;
import org.driftward.scoring.definition.ScoreBooks;
import org.driftward.scoring.policy.PolicyFile;

/**
 * What this process knows of the editions: those of its own files first, then what has been
 * adopted. Grows only. Thread-safe.
 */
public final class EditionsInForce {

  private final Catalogue catalogue;
  private final ScoreBook book;
  private final ScoringPolicy policy;
  private volatile Timeline timeline;

  public EditionsInForce(Catalogue catalogue, ScoreBook book, ScoringPolicy policy) {
    this.catalogue = catalogue;
    this.book = book;
    this.policy = policy;
    this.timeline = new Timeline(Editions.only(new Judge(catalogue, book, policy)));
  }

  /** The timeline under every edition known now; ask again rather than keep it. */
  public Timeline timeline() {
    return timeline;
  }

  public Editions editions() {
    return timeline.editions();
  }

  /**
   * An edition from its texts.
   *
   * @throws IllegalStateException naming text, line and fault if it is broken
   */
  public Edition read(EditionFile file) {
    var own = PolicyFile.read("policy", file.policy(), policy);
    var scores = ScoreBooks.with(book, file.scores(), catalogue);
    return new Edition(own.version(), file.from(), new Judge(catalogue, scores, own));
  }

  /**
   * Takes in an adopted edition; one whose version is known already changes nothing.
   *
   * @throws IllegalStateException naming text, line and fault if it is broken
   */
  public synchronized void adopt(EditionFile file) {
    var edition = read(file);
    if (!editions().knows(edition.version())) {
      timeline = timeline.under(editions().with(edition));
      notifyAll();
    }
  }

  /**
   * Waits until a version is known.
   *
   * @return whether it is
   */
  public synchronized boolean await(String version, Duration patience) throws InterruptedException {
    long end = System.nanoTime() + patience.toNanos();
    while (!editions().knows(version)) {
      long left = TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
      if (left <= 0) {
        return false;
      }
      wait(left);
    }
    return true;
  }
}
