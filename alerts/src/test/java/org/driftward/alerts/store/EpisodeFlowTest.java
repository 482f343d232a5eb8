package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Answer;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.store.Intake.News;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The whole way of an episode through the real database. */
class EpisodeFlowTest {

  private final TestHouse house = new TestHouse();

  @Test
  void shouldOpenEpisodeOnceHoweverOftenTheSnapshotComes() {
    admit("V-1", "A");
    var picture = new News.Picture(Pictures.of("V-1", TestHouse.START).score(7).build());

    house.intake.take(List.of(picture, picture));
    house.intake.take(List.of(picture));

    var episode = house.desk.running("V-1").orElseThrow();
    assertThat(episode.state()).isEqualTo(EpisodeState.OPEN);
    assertThat(episode.level()).isEqualTo(Level.HIGH);
    assertThat(episode.ward()).isEqualTo("A");
    assertThat(episode.due()).isEqualTo(TestHouse.START.plus(Duration.ofMinutes(5)));
    assertThat(episode.reasons().get(0).words()).isEqualTo("NEWS2 7 at 03:00 (7 or more)");
    assertThat(house.desk.story(episode.id()))
        .extracting(EpisodeChange::kind)
        .containsExactly("opened");
  }

  @Test
  void shouldKeepTheWholeStoryOfAnAnsweredEpisode() {
    var id = opened("V-2", 7).id();

    act(id, Action.ACKNOWLEDGE, null);
    house.clock.forward(Duration.ofMinutes(3));
    act(id, Action.ATTEND, null);
    house.clock.forward(Duration.ofMinutes(10));
    var closed = act(id, Action.CLOSE, "oxygen given, reviewed");

    assertThat(closed.state()).isEqualTo(EpisodeState.CLOSED);
    assertThat(closed.attendedAt()).isEqualTo(TestHouse.START.plus(Duration.ofMinutes(3)));
    var story = house.desk.story(id);
    assertThat(story)
        .extracting(EpisodeChange::kind)
        .containsExactly("opened", "acknowledged", "attended", "closed");
    assertThat(story.get(3).episode()).isEqualTo(closed);
    assertThat(story.get(3).reason()).isEqualTo("oxygen given, reviewed");
    assertThat(house.desk.running("V-2")).isEmpty();
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldClimbExactlyAtTheDeadlineAndOnlyOnce() {
    var due = opened("V-3", 7).due();

    house.clock.set(due.minusMillis(1));
    assertThat(house.due.fire(10)).isZero();
    house.clock.set(due);
    assertThat(house.due.fire(10)).isEqualTo(1);
    assertThat(house.due.fire(10)).isZero();

    var climbed = house.desk.running("V-3").orElseThrow();
    assertThat(climbed.rung()).isEqualTo(1);
    assertThat(climbed.due()).isEqualTo(due.plus(Duration.ofMinutes(5)));
  }

  @Test
  void shouldTellTheSlowerOfTwoWhatHappened() {
    var id = opened("V-4", 5).id();
    act(id, Action.ACKNOWLEDGE, null);

    var answer =
        house.desk.act(
            new Request(id, Action.ACKNOWLEDGE, 1L, null, null, null, null), People.RESPONSE);

    assertThat(answer).isInstanceOf(Answer.NoLongerApplies.class);
    assertThat(((Answer.NoLongerApplies) answer).current().ownerName()).isEqualTo("Charge Two");
  }

  @Test
  void shouldSendEveryChangeInTheOrderOfTheJournal() {
    var id = opened("V-5", 7).id();
    act(id, Action.ACKNOWLEDGE, null);
    act(id, Action.ATTEND, null);
    var sent = new ArrayList<Outbox.Message>();

    int first = house.outbox.send(2, sent::addAll);
    int rest = house.outbox.send(100, sent::addAll);

    assertThat(first).isEqualTo(2);
    assertThat(rest).isEqualTo(1);
    assertThat(house.outbox.send(100, sent::addAll)).isZero();
    var changes =
        sent.stream()
            .map(
                m ->
                    JsonFormat.of(EpisodeChange.class)
                        .read(m.payload().getBytes(StandardCharsets.UTF_8)))
            .toList();
    assertThat(changes).isEqualTo(house.desk.story(id));
    assertThat(sent).extracting(Outbox.Message::key).containsOnly("V-5");
  }

  @Test
  void shouldKeepMessagesThatKafkaDidNotAcknowledge() {
    opened("V-6", 7);

    assertThatThrownBy(
            () ->
                house.outbox.send(
                    10,
                    messages -> {
                      throw new IllegalStateException("no acknowledgement");
                    }))
        .isInstanceOf(IllegalStateException.class);

    assertThat(house.outbox.send(10, messages -> {})).isEqualTo(1);
  }

  @Test
  void shouldListMostUrgentFirstAndOnlyTheWardsAskedFor() {
    admit("V-7", "A");
    admit("V-8", "A");
    admit("V-9", "B");
    picture("V-7", 5, TestHouse.START);
    picture("V-8", 8, TestHouse.START.plusSeconds(60));
    picture("V-9", 9, TestHouse.START);

    assertThat(house.desk.list(Set.of("A"), Set.of(), null))
        .extracting(Episode::encounter)
        .containsExactly("V-8", "V-7");
    assertThat(house.desk.list(null, Set.of(), Level.HIGH))
        .extracting(Episode::encounter)
        .containsExactly("V-9", "V-8");
    assertThat(house.desk.list(null, Set.of(EpisodeState.CLOSED), null)).isEmpty();
  }

  @Test
  void shouldCloseWhenThePatientLeavesTheHouse() {
    var id = opened("V-10", 7).id();

    house.intake.take(List.of(new News.BedMove(encounter("V-10", "A", 2, TestHouse.START))));

    var over = house.desk.find(id).orElseThrow();
    assertThat(over.closedBecause()).isEqualTo("discharged");
    house.clock.forward(Duration.ofDays(2));
    assertThat(house.due.fire(10)).isZero();
  }

  @Test
  void shouldCarryAnEpisodeOverWhenTwoEncountersBecomeOne() {
    admit("V-13", "A");
    var id = opened("V-12", 7).id();
    var admitted = TestHouse.START.minus(Duration.ofDays(1));

    house.intake.take(
        List.of(
            new News.BedMove(
                new Encounter(
                    "V-12",
                    new Patient("P-V-12", null, null, null),
                    List.of(new Stay("A", "1", admitted)),
                    admitted,
                    null,
                    "V-13",
                    2))));

    assertThat(house.desk.running("V-12")).isEmpty();
    assertThat(house.desk.running("V-13").orElseThrow().id()).isEqualTo(id);
    // Nobody has answered: the clock that ran before runs on and fires.
    house.clock.forward(Duration.ofHours(1));
    assertThat(house.due.fire(10)).isPositive();
  }

  @Test
  void shouldShowConcernBeforeTheBedIsKnownAndMoveItAfterwards() {
    picture("V-11", 7, TestHouse.START);
    var before = house.desk.running("V-11").orElseThrow();

    admit("V-11", "C");

    assertThat(before.ward()).isEqualTo("unassigned");
    var after = house.desk.running("V-11").orElseThrow();
    assertThat(after.ward()).isEqualTo("C");
    assertThat(after.due()).isEqualTo(before.due());
  }

  private Episode opened(String encounter, int score) {
    admit(encounter, "A");
    picture(encounter, score, TestHouse.START);
    return house.desk.running(encounter).orElseThrow();
  }

  private void picture(String encounter, int score, Instant asOf) {
    house.intake.take(List.of(new News.Picture(Pictures.of(encounter, asOf).score(score).build())));
  }

  private void admit(String encounter, String ward) {
    house.intake.take(List.of(new News.BedMove(encounter(encounter, ward, 1, null))));
  }

  private static Encounter encounter(
      String id, String ward, long version, @Nullable Instant discharged) {
    var admitted = TestHouse.START.minus(Duration.ofDays(1));
    return new Encounter(
        id,
        new Patient("P-" + id, null, null, null),
        List.of(new Stay(ward, "1", admitted)),
        admitted,
        discharged,
        null,
        version);
  }

  private Episode act(String id, Action action, @Nullable String reason) {
    var answer =
        house.desk.act(new Request(id, action, null, null, reason, null, null), People.CHARGE);
    assertThat(answer).isInstanceOf(Answer.Done.class);
    return ((Answer.Done) answer).episode();
  }
}
