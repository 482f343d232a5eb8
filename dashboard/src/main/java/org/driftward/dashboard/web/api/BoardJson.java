package org.driftward.dashboard.web.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.EpisodeView;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.Board.Counts;
import org.driftward.dashboard.core.Board.Unreadable;
import org.driftward.dashboard.core.Card;
import org.driftward.dashboard.core.Concern;
import org.driftward.dashboard.core.Movement;
import org.driftward.dashboard.core.ScoreLine;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.StandingFact.Fact;
import org.jspecify.annotations.Nullable;

/** {@code GET /api/wards/{ward}/board}. What is absent is null, never left out. */
record BoardJson(
    String ward,
    Instant asOf,
    Counts counts,
    List<PatientJson> patients,
    List<Unreadable> unreadable) {

  private static final JsonFormat<BoardJson> FORMAT = JsonFormat.of(BoardJson.class);

  /**
   * @param movement which way the score goes, in a word
   * @param delta newest lower bound less the one before, or null
   */
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record PatientJson(
      String encounter,
      @Nullable String bed,
      @Nullable String name,
      @Nullable ScoreLine score,
      @Nullable Level level,
      Concern concern,
      Movement.Direction movement,
      @Nullable BigDecimal delta,
      List<String> reasons,
      @Nullable Instant lastSet,
      @Nullable Instant nextDue,
      boolean overdue,
      @Nullable EpisodeView episode,
      @Nullable String ceiling,
      int oxygenScale,
      boolean hold,
      List<Fact> reviewsDue) {

    static PatientJson of(Card card) {
      return new PatientJson(
          card.encounter(),
          card.bed(),
          card.name(),
          card.score(),
          card.level(),
          card.concern(),
          card.movement().direction(),
          card.movement().delta(),
          card.reasons(),
          card.lastSet(),
          card.nextDue(),
          card.overdue(),
          card.episode() == null ? null : EpisodeView.of(card.episode(), card.present()),
          card.ceiling(),
          card.oxygenScale(),
          card.hold(),
          card.reviewsDue());
    }
  }

  static byte[] write(Board board) {
    return write(board, board.asOf());
  }

  static byte[] write(Board board, Instant asOf) {
    return FORMAT.write(
        new BoardJson(
            board.ward(),
            asOf,
            board.counts(),
            board.cards().stream().map(PatientJson::of).toList(),
            board.unreadable()));
  }
}
