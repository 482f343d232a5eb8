package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.Test;

class ActsTest {

  private static final Reader CHARGE = new Reader("ines.varga", Set.of(AccountRole.CHARGE));
  private static final Reader BEDSIDE = new Reader("t.almeida", Set.of(AccountRole.BEDSIDE));
  private static final Reader MANAGER = new Reader("m.anager", Set.of(AccountRole.MANAGER));

  private final Episode open = Sample.open("V-1", Level.HIGH, 4, "a reason");
  private final Episode attended =
      Sample.episode(
          "V-1",
          Level.HIGH,
          EpisodeState.ATTENDED,
          "Ines Varga",
          Awaiting.REASSESSMENT,
          10,
          20,
          "a reason");

  @Test
  void shouldPutTheNextNaturalActionFirst() {
    assertThat(words(Acts.oneTouch(open, BEDSIDE))).containsExactly("acknowledge", "attend");
  }

  @Test
  void shouldNotAskWhoIsAtTheBedsideToSayItAgain() {
    assertThat(Acts.oneTouch(attended, CHARGE)).isEmpty();
    assertThat(words(Acts.oneTouch(attended, BEDSIDE))).containsExactly("attend");
  }

  @Test
  void shouldOfferToHandOverOnlyWhatSomebodyHas() {
    assertThat(words(Acts.worded(open, CHARGE))).containsExactly("escalate", "hold");
    assertThat(words(Acts.worded(attended, CHARGE)))
        .containsExactly("escalate", "hand-over", "hold", "close");
  }

  @Test
  void shouldLeaveHoldingAndClosingToThoseWhoDecide() {
    assertThat(words(Acts.worded(attended, BEDSIDE))).containsExactly("escalate", "hand-over");
  }

  @Test
  void shouldOfferNothingToThoseWhoDoNotCareForPatients() {
    assertThat(Acts.oneTouch(open, MANAGER)).isEmpty();
    assertThat(Acts.worded(open, MANAGER)).isEmpty();
  }

  private static List<String> words(List<Act> acts) {
    return acts.stream().map(Act::word).toList();
  }
}
