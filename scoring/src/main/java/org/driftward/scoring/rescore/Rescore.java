package org.driftward.scoring.rescore;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Word;
import org.driftward.scoring.core.timeline.Edition;
import org.driftward.scoring.edition.EditionFile;
import org.jspecify.annotations.Nullable;

/** One re-scoring: what is asked, and where it stands. Thread-safe. */
final class Rescore {

  /** Where a re-scoring stands. */
  enum State implements Word {
    RUNNING,
    FINISHED,
    FAILED,
    ADOPTED
  }

  private final String id;
  private final EditionFile file;
  private final Edition candidate;
  private final List<String> against;
  private final String by;
  private final Instant startedAt;
  private final Path report;
  private final Tally tally = new Tally();
  private State state = State.RUNNING;
  private @Nullable String failure;
  private @Nullable Instant endedAt;

  /**
   * @param against versions of the editions adopted when it began
   */
  Rescore(
      String id,
      EditionFile file,
      Edition candidate,
      List<String> against,
      String by,
      Instant startedAt,
      Path report) {
    this.id = id;
    this.file = file;
    this.candidate = candidate;
    this.against = against;
    this.by = by;
    this.startedAt = startedAt;
    this.report = report;
  }

  String id() {
    return id;
  }

  EditionFile file() {
    return file;
  }

  Edition candidate() {
    return candidate;
  }

  List<String> against() {
    return against;
  }

  Path report() {
    return report;
  }

  Tally tally() {
    return tally;
  }

  synchronized State state() {
    return state;
  }

  synchronized void end(State reached, @Nullable String why, Instant now) {
    state = reached;
    failure = why;
    endedAt = now;
  }

  synchronized RescoreView view() {
    return new RescoreView(
        id,
        candidate.version(),
        candidate.from(),
        state.word(),
        failure,
        by,
        startedAt,
        endedAt,
        tally.counts());
  }
}
