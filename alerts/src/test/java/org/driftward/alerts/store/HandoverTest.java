package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.Handover;
import org.driftward.alerts.contract.HandoverDesk.Answer;
import org.driftward.alerts.contract.HandoverDesk.Giving;
import org.driftward.alerts.contract.HandoverText;
import org.driftward.alerts.contract.WardHandoverDesk;
import org.driftward.alerts.store.Intake.News;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * Handing over patients and wards. The order of a text is that of ISBAR: identify, situation,
 * background, assessment, recommendation (Australian and WHO hand-over guidance, practice.md
 * section 4).
 */
class HandoverTest {

  private static final Actor NEXT = new Actor("n.six", "Nurse Six", People.BEDSIDE.roles());

  private final TestHouse house = new TestHouse();

  @Test
  void shouldFillInTheFactsAndLeaveTheJudgementToThePerson() {
    opened("V-1");

    var draft = house.handovers.draft("V-1", People.BEDSIDE).orElseThrow();

    assertThat(draft.identify())
        .contains("I am Nurse One", "Sample, V-1", "born 3 Feb 1950", "P-V-1", "bed 1");
    assertThat(draft.situation())
        .contains("high priority", "NEWS2 8 at 03:00 (7 or more)", "Nobody has answered yet");
    assertThat(draft.background()).contains("Admitted 4 Jan 03:00", "Standard settings");
    assertThat(draft.assessment()).isEmpty();
    assertThat(draft.recommendation())
        .startsWith("Draft from policy")
        .contains("at the bedside within 30 min", "acknowledgement is due by 03:05");
  }

  @Test
  void shouldHandTheEpisodeOverWithTheText() {
    var id = opened("V-2");
    acknowledge(id);

    var given = give("V-2", "n.six", "likely sepsis", "review within 15 min");

    assertThat(given.episode()).isEqualTo(id);
    assertThat(given.readBack()).isTrue();
    var episode = house.desk.find(id).orElseThrow();
    assertThat(episode.owner()).isEqualTo("n.six");
    assertThat(episode.ownerName()).isEqualTo("Nurse Six");
    assertThat(house.handovers.of("V-2")).containsExactly(given);
    assertThat(house.journal.after(0, 100))
        .filteredOn(entry -> entry.subject().equals("handover/" + given.id()))
        .singleElement()
        .satisfies(entry -> assertThat(entry.body()).contains("likely sepsis"));
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldLeaveTheEpisodeWhereItIsWhenTheReceiverHasNoAccount() {
    var id = opened("V-3");
    acknowledge(id);

    give("V-3", null, "unclear", "please come");

    assertThat(house.desk.find(id).orElseThrow().owner()).isEqualTo(People.CHARGE.account());
  }

  @Test
  void shouldKeepNothingWhileNobodyHasAnswered() {
    opened("V-4");

    var answer = house.handovers.give(giving("V-4", "n.six", "a", "b"), People.CHARGE);

    assertThat(answer).isInstanceOf(Answer.NoLongerApplies.class);
    assertThat(house.handovers.of("V-4")).isEmpty();
  }

  @Test
  void shouldTakeNoDraftForARecommendation() {
    opened("V-5");
    var draft = house.handovers.draft("V-5", People.CHARGE).orElseThrow().recommendation();

    assertThat(house.handovers.give(giving("V-5", null, "a", draft), People.CHARGE))
        .isInstanceOf(Answer.Incomplete.class);
    assertThat(house.handovers.give(giving("V-5", null, " ", "b"), People.CHARGE))
        .isInstanceOf(Answer.Incomplete.class);
    assertThat(house.handovers.give(giving("V-5", null, "a", "b"), People.MANAGER))
        .isInstanceOf(Answer.NotAllowed.class);
    assertThat(house.handovers.give(giving("V-none", null, "a", "b"), People.CHARGE))
        .isInstanceOf(Answer.Unknown.class);
  }

  @Test
  void shouldHaveAWardSignedForByTwoPeople() {
    var given =
        (WardHandoverDesk.Answer.Done)
            house.wardHandovers.give("A", "Occupancy\n  2 patients", "bed 3 goes", People.CHARGE);
    var id = given.handover().id();

    assertThat(house.wardHandovers.receive(id, People.CHARGE))
        .isInstanceOf(WardHandoverDesk.Answer.NotAllowed.class);
    house.clock.forward(Duration.ofMinutes(5));
    house.wardHandovers.receive(id, NEXT);

    var signed = house.wardHandovers.recent("A", 5).get(0);
    assertThat(signed.receiverName()).isEqualTo("Nurse Six");
    assertThat(signed.receivedAt()).isEqualTo(house.clock.instant());
    assertThat(house.wardHandovers.receive(id, NEXT))
        .isInstanceOf(WardHandoverDesk.Answer.NoLongerApplies.class);
    assertThat(house.journal.after(0, 100))
        .extracting(entry -> entry.kind() + " " + entry.by())
        .containsExactly("given c.two", "received n.six");
  }

  private Handover give(
      String encounter, @Nullable String account, String assessment, String recommendation) {
    var giving = giving(encounter, account, assessment, recommendation);
    return ((Answer.Done) house.handovers.give(giving, People.CHARGE)).handover();
  }

  private static Giving giving(
      String encounter, @Nullable String account, String assessment, String recommendation) {
    var text = new HandoverText("i", "s", "b", assessment, recommendation);
    return new Giving(encounter, "Nurse Six", account, text, true);
  }

  private void acknowledge(String id) {
    house.desk.act(
        new Request(id, Action.ACKNOWLEDGE, null, null, null, null, null), People.CHARGE);
  }

  private String opened(String encounter) {
    var stay = encounter(encounter);
    var picture = Pictures.of(encounter, TestHouse.START).score(8).build();
    house.record.add(stay);
    house.record.add(picture);
    house.intake.take(List.of(new News.BedMove(stay), new News.Picture(picture)));
    return house.desk.running(encounter).orElseThrow().id();
  }

  static Encounter encounter(String id) {
    var admitted = TestHouse.START.minus(Duration.ofDays(1));
    return new Encounter(
        id,
        new Patient("P-" + id, "Sample, " + id, LocalDate.of(1950, 2, 3), null),
        List.of(new Stay("A", "1", admitted)),
        admitted,
        null,
        null,
        1);
  }
}
