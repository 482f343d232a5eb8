package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.ShiftDesk.Answer;
import org.driftward.alerts.contract.ShiftDesk.Begin;
import org.driftward.alerts.store.Intake.News;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Coming on and going off duty on a real PostgreSQL. */
class ShiftTest {

  private static final Actor NEXT = new Actor("n.six", "Nurse Six", People.BEDSIDE.roles());

  private final TestHouse house = new TestHouse();

  @Test
  void shouldPassTheEpisodeToWhoeverTakesOver() {
    var mine = begin(People.BEDSIDE, Duty.BEDSIDE, "1");
    var id = owned("V-1", People.BEDSIDE);
    var due = episode(id).due();

    begin(NEXT, Duty.BEDSIDE, mine.id(), Set.of("1"));

    assertThat(episode(id).owner()).isEqualTo("n.six");
    assertThat(episode(id).ownerName()).isEqualTo("Nurse Six");
    assertThat(episode(id).due()).isEqualTo(due);
    assertThat(kinds(id)).containsExactly("opened", "acknowledged", "passed-on");
    assertThat(house.desk.story(id).get(2).reason()).isEqualTo("the duty of Nurse One has ended");
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldPassToTheChargeNurseWhereNobodyTakesTheBed() {
    begin(People.CHARGE, Duty.CHARGE);
    var mine = begin(People.BEDSIDE, Duty.BEDSIDE, "1");
    var id = owned("V-2", People.BEDSIDE);

    house.shifts.end(mine.id(), People.BEDSIDE);

    assertThat(episode(id).owner()).isEqualTo(People.CHARGE.account());
  }

  @Test
  void shouldLetTheClockRunAgainWhereNobodyIsLeft() {
    var mine = begin(People.BEDSIDE, Duty.BEDSIDE, "1");
    var id = owned("V-3", People.BEDSIDE);
    house.clock.forward(Duration.ofMinutes(2));

    house.shifts.end(mine.id(), People.BEDSIDE);

    assertThat(episode(id).state()).isEqualTo(EpisodeState.OPEN);
    assertThat(episode(id).owner()).isNull();
    assertThat(episode(id).due()).isEqualTo(house.clock.instant().plus(Duration.ofMinutes(5)));
    assertThat(kinds(id)).endsWith("owner-left");
  }

  @Test
  void shouldEndADutyAtItsPlannedEndAndNotBefore() {
    var mine = begin(People.BEDSIDE, Duty.BEDSIDE, "1");
    var id = owned("V-4", People.BEDSIDE);

    house.clock.set(mine.until().minusMillis(1));
    assertThat(house.shiftEnds.look()).isZero();
    assertThat(episode(id).owner()).isEqualTo(People.BEDSIDE.account());
    house.clock.set(mine.until());
    assertThat(house.shiftEnds.look()).isEqualTo(2);
    assertThat(house.shiftEnds.look()).isZero();

    assertThat(episode(id).owner()).isNull();
    assertThat(house.shifts.running("A")).isEmpty();
  }

  @Test
  void shouldTakeAnAnswerAfterTheEndOfDutyAsStayingOn() {
    var mine = begin(People.BEDSIDE, Duty.BEDSIDE, "1");
    house.shifts.end(mine.id(), People.BEDSIDE);

    var id = owned("V-5", People.BEDSIDE);

    assertThat(episode(id).owner()).isEqualTo(People.BEDSIDE.account());
    var staying = house.shifts.running("A").get(0);
    assertThat(staying.account()).isEqualTo(People.BEDSIDE.account());
    assertThat(staying.until()).isEqualTo(house.clock.instant().plus(Duration.ofHours(1)));
    house.clock.set(staying.until());
    house.shiftEnds.look();
    assertThat(episode(id).owner()).isNull();
  }

  @Test
  void shouldNotHandOverToSomebodyOffDuty() {
    begin(People.CHARGE, Duty.CHARGE);
    var other = begin(NEXT, Duty.BEDSIDE, "1");
    house.shifts.end(other.id(), NEXT);
    var id = owned("V-6", People.CHARGE);

    var answer =
        house.desk.act(
            new Request(id, Action.HAND_OVER, null, null, null, "n.six", null), People.CHARGE);

    assertThat(answer).isEqualTo(new EpisodeDesk.Answer.Incomplete("to", "has gone off duty"));
    assertThat(episode(id).owner()).isEqualTo(People.CHARGE.account());
  }

  @Test
  void shouldNameWhoeverTakesOverAsTheAccountDoes() {
    house.accounts.put("n.six", "Nurse Six", "bedside", WardScope.of(Set.of("A")));
    begin(NEXT, Duty.BEDSIDE, "1");
    var id = owned("V-7", People.CHARGE);

    house.desk.act(
        new Request(id, Action.HAND_OVER, null, null, null, "n.six", null), People.CHARGE);

    assertThat(episode(id).ownerName()).isEqualTo("Nurse Six");
  }

  @Test
  void shouldHaveOneChargeNurseAtATime() {
    begin(People.CHARGE, Duty.CHARGE);
    house.clock.forward(Duration.ofMinutes(1));

    var other = begin(new Actor("c.seven", "Charge Seven", People.CHARGE.roles()), Duty.CHARGE);

    assertThat(house.shifts.running("A")).containsExactly(other);
    assertThat(house.shifts.between("A", TestHouse.START, TestHouse.START.plusSeconds(61)))
        .hasSize(2);
  }

  @Test
  void shouldRefuseWhatThePolicyOrTheRoleDoesNotAllow() {
    var long17 = TestHouse.START.plus(Duration.ofHours(17));

    assertThat(house.shifts.begin(beginning(NEXT, Duty.CHARGE, null), People.BEDSIDE))
        .isInstanceOf(Answer.NotAllowed.class);
    assertThat(
            house.shifts.begin(
                new Begin("A", Duty.CHARGE, "c.two", "", Set.of(), long17, null), People.CHARGE))
        .isInstanceOf(Answer.Incomplete.class);
    assertThat(house.shifts.end("S-0", People.CHARGE)).isInstanceOf(Answer.Unknown.class);
  }

  /** Somebody answers in the very moment in which their duty ends, many times over. */
  @Test
  @Timeout(120)
  void shouldNeverLeaveAnEpisodeWithSomebodyWhoEndsDutyWhileAnswering() throws Exception {
    var pool = Executors.newFixedThreadPool(2);
    try {
      for (int round = 0; round < 40; round++) {
        var shift = begin(People.BEDSIDE, Duty.BEDSIDE, "1");
        var id = opened("V-1" + round).id();
        var together = new CyclicBarrier(2);
        var end =
            pool.submit(
                () -> {
                  together.await(10, TimeUnit.SECONDS);
                  return house.shifts.end(shift.id(), People.BEDSIDE);
                });
        var answer =
            pool.submit(
                () -> {
                  together.await(10, TimeUnit.SECONDS);
                  return house.desk.act(request(id), People.BEDSIDE);
                });
        end.get();
        answer.get();

        boolean on =
            house.shifts.running("A").stream()
                .anyMatch(s -> s.account().equals(People.BEDSIDE.account()));
        var owner = episode(id).owner();
        assertThat(owner == null || on).as("round " + round + ", owner " + owner).isTrue();
        house.shifts.running("A").forEach(s -> house.shifts.end(s.id(), People.CHARGE));
      }
    } finally {
      pool.shutdownNow();
    }
    assertThat(house.journal.check().sound()).isTrue();
  }

  private Shift begin(Actor actor, Duty duty, String... beds) {
    return begin(actor, duty, null, Set.of(beds));
  }

  private Shift begin(Actor actor, Duty duty, @Nullable String takesOver, Set<String> beds) {
    var begin = new Begin("A", duty, actor.account(), actor.name(), beds, null, takesOver);
    return ((Answer.Done) house.shifts.begin(begin, actor)).shift();
  }

  private static Begin beginning(Actor actor, Duty duty, @Nullable String takesOver) {
    return new Begin("A", duty, actor.account(), actor.name(), Set.of(), null, takesOver);
  }

  private String owned(String encounter, Actor owner) {
    var id = opened(encounter).id();
    house.desk.act(request(id), owner);
    return id;
  }

  private static Request request(String id) {
    return new Request(id, Action.ACKNOWLEDGE, null, null, null, null, null);
  }

  private Episode opened(String encounter) {
    Instant admitted = TestHouse.START.minus(Duration.ofDays(1));
    var stay =
        new Encounter(
            encounter,
            new Patient("P-" + encounter, null, null, null),
            List.of(new Stay("A", "1", admitted)),
            admitted,
            null,
            null,
            1);
    house.intake.take(List.of(new News.BedMove(stay)));
    house.intake.take(
        List.of(new News.Picture(Pictures.of(encounter, TestHouse.START).score(8).build())));
    return house.desk.running(encounter).orElseThrow();
  }

  private Episode episode(String id) {
    return house.desk.find(id).orElseThrow();
  }

  private List<String> kinds(String id) {
    return house.desk.story(id).stream().map(EpisodeChange::kind).toList();
  }
}
