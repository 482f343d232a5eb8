package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.Card;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient.Sex;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class NewsTest {

  private final Episode open = Sample.open("V-1", Level.MEDIUM, 4, "NEWS2 is 5: at or above 5");

  @Test
  void shouldSayNothingWhenNothingChanged() {
    assertThat(News.between(board(open), board(open))).isEmpty();
  }

  @Test
  void shouldTellOfANewConcern() {
    assertThat(News.between(board(null), board(open)))
        .contains("Bed 4, Marlow: medium priority, NEWS2 is 5: at or above 5.");
  }

  @Test
  void shouldTellThatAConcernRose() {
    var risen = Sample.open("V-1", Level.HIGH, 4, "NEWS2 is 7: at or above 7");
    assertThat(News.between(board(open), board(risen)))
        .contains("Bed 4, Marlow: high priority, NEWS2 is 7: at or above 7.");
  }

  @Test
  void shouldTellWhoTookIt() {
    var taken =
        Sample.episode(
            "V-1",
            Level.MEDIUM,
            EpisodeState.ACKNOWLEDGED,
            "Rui Okafor",
            Awaiting.ATTENDANCE,
            12,
            4,
            "a reason");
    assertThat(News.between(board(open), board(taken)))
        .contains("Bed 4, Marlow: acknowledged, Rui Okafor.");
  }

  @Test
  void shouldTellThatAConcernIsClosed() {
    assertThat(News.between(board(open), board(null))).contains("Bed 4, Marlow: concern closed.");
  }

  private static Board board(@Nullable Episode episode) {
    var encounter = Sample.encounter("V-1", "4", "Marlow, Edith", 74, Sex.FEMALE);
    var cards = new ArrayList<Card>();
    cards.add(Sample.card(encounter, null, null, episode, Sample.totals()));
    return Board.of("alder", Sample.NOW, cards);
  }
}
