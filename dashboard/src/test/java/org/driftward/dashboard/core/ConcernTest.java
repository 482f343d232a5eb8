package org.driftward.dashboard.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.at;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.episode;
import static org.driftward.dashboard.Samples.snapshot;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.dashboard.core.Cards.Known;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * The order of a board. That the unanswered come first and the overdue with a high score next rests
 * on Gupta 2017 and Redfern 2019; the threshold 5 on the NEWS2 report (RCP 2017); the rest of the
 * order is our own choice.
 */
class ConcernTest {

  private static final Cards CARDS = new Cards(BigDecimal.valueOf(5));

  @Test
  void shouldPutTheUnansweredFirstByLevelThenTheOverdueWithAHighScore() {
    var now = at(61);
    var board =
        Board.of(
            "W1",
            now,
            List.of(
                card("steady", 10, List.of(2, 2), null, now),
                card("overdue", -10, List.of(1, 1), null, now),
                card("no-set", null, List.of(), null, now),
                card("sliding", 10, List.of(0, 3), null, now),
                card(
                    "answered", 10, List.of(7, 7), running(EpisodeState.ATTENDED, Level.HIGH), now),
                card("low", 10, List.of(3, 3), running(EpisodeState.OPEN, Level.LOW), now),
                card("overdue-high", -10, List.of(5, 5), null, now),
                card("medium", 10, List.of(9, 9), running(EpisodeState.OPEN, Level.MEDIUM), now),
                card("high", 10, List.of(3, 3), running(EpisodeState.OPEN, Level.HIGH), now)));

    assertThat(board.cards())
        .extracting(Card::encounter)
        .containsExactly(
            "high",
            "medium",
            "overdue-high",
            "low",
            "answered",
            "sliding",
            "overdue",
            "no-set",
            "steady");
    assertThat(board.counts()).isEqualTo(new Board.Counts(9, 3, 4, 2, 1));
  }

  @Test
  void shouldTreatAnAnsweredEpisodeWhoseClockRanOutAsUnanswered() {
    var acknowledged = episode("E", "a", 2, EpisodeState.ACKNOWLEDGED, Level.HIGH, 30);

    assertThat(card("a", 0, List.of(7), acknowledged, at(30)).concern())
        .isEqualTo(Concern.ANSWERED_HIGH);
    assertThat(card("a", 0, List.of(7), acknowledged, at(30).plusMillis(1)).concern())
        .isEqualTo(Concern.UNANSWERED_HIGH);
  }

  @Test
  void shouldJudgeAnOverdueSetByTheWorstTotalThatIsPossible() {
    var possible = new ScoreLine("s", "S", big(2), big(5), false, "low", "medium", 0, List.of("t"));
    var impossible = new ScoreLine("s", "S", big(2), big(4), false, "low", "low", 0, List.of("t"));

    assertThat(Concern.of(possible, Movement.UNKNOWN, null, true, big(5), at(0)))
        .isEqualTo(Concern.OVERDUE_HIGH);
    assertThat(Concern.of(impossible, Movement.UNKNOWN, null, true, big(5), at(0)))
        .isEqualTo(Concern.UNSEEN);
  }

  @Test
  void shouldSlideFromTwoPointsOnOrWithATrend() {
    var line = new ScoreLine("s", "S", big(2), big(2), true, "low", "low", 0, List.of());
    var rising = Movement.Direction.RISING;

    assertThat(concern(line, new Movement(rising, big(1), false))).isEqualTo(Concern.WATCHED);
    assertThat(concern(line, new Movement(rising, big(2), false))).isEqualTo(Concern.SLIDING);
    assertThat(concern(line, new Movement(rising, big(0), true))).isEqualTo(Concern.SLIDING);
  }

  @Test
  void shouldLetAHeldEpisodeRestUnlessThePatientSlides() {
    var held = episode("E", "a", 3, EpisodeState.HELD, Level.HIGH, 120);

    assertThat(card("a", 0, List.of(7, 7), held, at(10)).concern()).isEqualTo(Concern.HELD);
    assertThat(card("a", 0, List.of(5, 7), held, at(10)).concern()).isEqualTo(Concern.SLIDING);
  }

  @Test
  void shouldOrderEqualConcernByWorstTotalThenByBedAsAPersonCounts() {
    var now = at(1);
    var cards =
        new ArrayList<>(
            List.of(
                inBed("a", "10", 3, now),
                inBed("b", "2", 3, now),
                inBed("c", "1", 1, now),
                inBed("d", null, 3, now)));
    var random = new Random(7);
    for (int i = 0; i < 20; i++) {
      Collections.shuffle(cards, random);

      assertThat(Board.of("W1", now, cards).cards())
          .extracting(Card::encounter)
          .containsExactly("b", "a", "d", "c");
    }
  }

  private static Concern concern(ScoreLine line, Movement movement) {
    return Concern.of(line, movement, null, false, big(5), at(0));
  }

  private static Card inBed(String id, @Nullable String bed, int total, Instant now) {
    return CARDS.card(
        new Known(
            encounter(id, "W1", bed, 1),
            snapshot(id, "A", 1, 0, total, total),
            null,
            null,
            List.of(new Total(at(0), big(total), big(total)))),
        List.of(),
        now);
  }

  private static Episode running(EpisodeState state, Level level) {
    return episode("E", "x", 1, state, level, 120);
  }

  /** A patient whose last set was taken at {@code minute}, or never; due an hour later. */
  private static Card card(
      String id,
      @Nullable Integer minute,
      List<Integer> totals,
      @Nullable Episode episode,
      Instant now) {
    var recent = new ArrayList<Total>();
    for (int total : totals) {
      recent.add(new Total(at(recent.size()), big(total), big(total)));
    }
    int last = totals.isEmpty() ? 0 : totals.get(totals.size() - 1);
    var newest = minute == null ? null : snapshot(id, "A", 1, minute, last, last);
    return CARDS.card(
        new Known(encounter(id, "W1", "1", 1), newest, null, episode, recent), List.of(), now);
  }

  private static BigDecimal big(int value) {
    return BigDecimal.valueOf(value);
  }
}
