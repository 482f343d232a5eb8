package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.People;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Two encounters that turn out to be one. Thresholds of 5 and 7: RCP NEWS2 2017, chart 4; what
 * becomes of the episodes is our own decision, no source.
 */
class MergingTest {

  private final Bedside given = new Bedside();
  private final Bedside survivor = new Bedside();

  MergingTest() {
    survivor.course = Course.begin("V-2");
  }

  @Test
  void shouldGoOnWithOwnerAndClockInTheSurvivingEncounter() {
    given.score(7).act(Action.ACKNOWLEDGE, People.CHARGE);
    var before = given.episode();

    merge(1);

    assertThat(given.calm()).isTrue();
    assertThat(survivor.episode())
        .satisfies(
            after -> {
              assertThat(after.id()).isEqualTo(before.id());
              assertThat(after.encounter()).isEqualTo("V-2");
              assertThat(after.state()).isEqualTo(EpisodeState.ACKNOWLEDGED);
              assertThat(after.owner()).isEqualTo(before.owner());
              assertThat(after.due()).isEqualTo(before.due());
            });
  }

  @Test
  void shouldJoinTheEpisodeThatRunsThereAndCallAgainIfItIsGraver() {
    given.score(7);
    survivor.score(5);

    merge(1);

    assertThat(given.episode().state()).isEqualTo(EpisodeState.CLOSED);
    assertThat(given.episode().closedBecause()).isEqualTo("merged into V-2");
    assertThat(survivor.episode().level()).isEqualTo(Level.HIGH);
    assertThat(survivor.kinds()).containsExactly("opened", "raised");
  }

  @Test
  void shouldDecideOnceHoweverOftenItIsTold() {
    given.score(7);

    merge(1);
    merge(1);

    assertThat(survivor.kinds()).containsExactly("moved");
  }

  @Test
  void shouldSayThatAnAdmissionWasCalledOff() {
    given.score(7);

    given.moved(encounter(null, Bedside.START, 1));

    assertThat(given.episode().state()).isEqualTo(EpisodeState.CLOSED);
    assertThat(given.episode().closedBecause()).isEqualTo("admission called off");
  }

  private void merge(long version) {
    var decisions =
        Bedside.ESCALATION.merged(
            given.course, survivor.course, encounter("V-2", null, version), given.now);
    for (var decision : decisions) {
      (decision.course().encounter().equals("V-1") ? given : survivor).take(decision);
    }
  }

  private static Encounter encounter(
      @Nullable String mergedInto, @Nullable Instant cancelled, long version) {
    return new Encounter(
        "V-1",
        new Patient("P-1", null, null, null),
        List.of(new Stay("LINDEN", "1", Bedside.START.minusSeconds(3600))),
        Bedside.START.minusSeconds(3600),
        null,
        mergedInto,
        cancelled,
        version);
  }
}
