package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Answer;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.ShiftDesk;
import org.driftward.alerts.store.Intake.News;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Nobody owns an episode who cannot answer for it, on a real PostgreSQL. */
class OwnersTest {

  private static final WardScope WARD_A = WardScope.of(Set.of("A"));
  private static final WardScope WARD_B = WardScope.of(Set.of("B"));
  private static final Actor OF_B = new Actor("c.six", "Charge Six", Set.of(AccountRole.CHARGE));

  private final TestHouse house = new TestHouse();

  @BeforeEach
  void accounts() {
    house.accounts.put("c.two", "Charge Two", AccountRole.CHARGE, WARD_A);
    house.accounts.put("n.one", "Nurse One", AccountRole.BEDSIDE, WARD_A);
    house.accounts.put("c.six", "Charge Six", AccountRole.CHARGE, WARD_B);
    house.accounts.put("m.four", "Manager Four", AccountRole.MANAGER, WardScope.EVERY_WARD);
    house.accounts.put("feeds", "Feeds", AccountRole.INTEGRATION, WardScope.EVERY_WARD);
    house.accounts.delete("nobody");
  }

  @Test
  void shouldHandOverToNobodyWhoCannotAnswer() {
    var id = owned("V-1");

    assertThat(handOver(id, "nobody")).isEqualTo(new Answer.Incomplete("to", "has no account"));
    assertThat(handOver(id, "c.six"))
        .isEqualTo(new Answer.Incomplete("to", "may not open the pages of ward A"));
    assertThat(List.of(handOver(id, "m.four"), handOver(id, "feeds")))
        .containsOnly(new Answer.Incomplete("to", "has no role that answers for patients"));
    assertThat(episode(id).owner()).isEqualTo("c.two");
  }

  @Test
  void shouldHandOverToWhoeverIsOnDutyWhereShiftsAreKept() {
    var id = owned("V-1");
    begin(People.CHARGE, "A", Duty.CHARGE);

    assertThat(handOver(id, "n.one"))
        .isEqualTo(new Answer.Incomplete("to", "is not on duty for ward A"));
    begin(People.BEDSIDE, "A", Duty.BEDSIDE);

    assertThat(handOver(id, "n.one")).isInstanceOf(Answer.Done.class);
    assertThat(episode(id).ownerName()).isEqualTo("Nurse One");
  }

  @Test
  void shouldSetNoDutyOfSomebodyWhoCannotAnswer() {
    assertThat(beginning("nobody", "A", Duty.CHARGE))
        .isEqualTo(new ShiftDesk.Answer.Incomplete("account", "has no account"));
    assertThat(beginning("c.six", "A", Duty.CHARGE))
        .isInstanceOf(ShiftDesk.Answer.Incomplete.class);
    assertThat(beginning("feeds", "A", Duty.CHARGE))
        .isInstanceOf(ShiftDesk.Answer.Incomplete.class);
  }

  @Test
  void shouldCallAgainWhenTheAccountOfTheOwnerIsDeleted() {
    var id = owned("V-1");
    house.accounts.delete("c.two");

    assertThat(house.unfit.look()).isEqualTo(1);
    assertThat(house.unfit.look()).isZero();

    assertThat(episode(id).state()).isEqualTo(EpisodeState.OPEN);
    assertThat(episode(id).owner()).isNull();
    assertThat(last(id).kind()).isEqualTo("owner-left");
    assertThat(last(id).reason()).isEqualTo("Charge Two has no account");
    assertThat(newestNotice(id)).isEqualTo(last(id).sequence());
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldCallAgainWhenTheOwnerLosesTheRoleOrTheWard() {
    var first = owned("V-1");
    house.accounts.put("c.two", "Charge Two", AccountRole.MANAGER, WARD_A);
    house.unfit.look();
    assertThat(last(first).kind()).isEqualTo("owner-left");

    house.accounts.put("c.two", "Charge Two", AccountRole.CHARGE, WARD_A);
    var second = owned("V-2");
    house.accounts.put("c.two", "Charge Two", AccountRole.CHARGE, WARD_B);
    house.unfit.look();
    assertThat(last(second).kind()).isEqualTo("owner-left");
  }

  /** Whoever is in charge did not ask for it, so it is theirs and calls again. */
  @Test
  void shouldCallWhoeverAnswersForTheBedWhenTheOwnerIsGone() {
    begin(People.BEDSIDE, "A", Duty.BEDSIDE, "1");
    begin(People.CHARGE, "A", Duty.CHARGE);
    var id = opened("V-1", "A").id();
    house.desk.act(request(id, Action.ACKNOWLEDGE, null), People.BEDSIDE);

    house.accounts.delete("n.one");
    house.unfit.look();

    assertThat(house.shifts.running("A")).extracting("account").containsExactly("c.two");
    assertThat(episode(id).owner()).isEqualTo("c.two");
    assertThat(episode(id).state()).isEqualTo(EpisodeState.OPEN);
    assertThat(last(id).kind()).isEqualTo("passed-on");
    assertThat(newestNotice(id)).isEqualTo(last(id).sequence());
  }

  @Test
  void shouldCallTheOtherWardAtOnceAndLeaveNobodyWhoMayNotOpenItsPages() {
    var id = owned("V-1");
    house.clock.forward(Duration.ofMinutes(3));

    move("V-1", "B", 2);

    assertThat(last(id).kind()).isEqualTo("transferred");
    assertThat(last(id).reason()).isEqualTo("from ward A");
    assertThat(episode(id).ward()).isEqualTo("B");
    assertThat(episode(id).state()).isEqualTo(EpisodeState.OPEN);
    assertThat(episode(id).due()).isEqualTo(house.clock.instant().plus(Duration.ofMinutes(5)));
    assertThat(newestNotice(id)).isEqualTo(last(id).sequence());
    assertThat(house.told.tones(Set.of("B"))).extracting("episode").containsExactly(id);
    house.unfit.look();
    assertThat(episode(id).owner()).isNull();
    assertThat(house.desk.act(request(id, Action.ACKNOWLEDGE, null), OF_B))
        .isInstanceOf(Answer.Done.class);
    assertThat(house.unfit.look()).isZero();
  }

  @Test
  void shouldPassToWhoeverIsInChargeOfTheOtherWard() {
    begin(OF_B, "B", Duty.CHARGE);
    var id = owned("V-1");

    move("V-1", "B", 2);
    house.unfit.look();

    assertThat(episode(id).owner()).isEqualTo("c.six");
    assertThat(episode(id).state()).isEqualTo(EpisodeState.OPEN);
    assertThat(last(id).reason()).isEqualTo("Charge Two may not open the pages of ward B");
  }

  @Test
  void shouldLeaveItWithAnOwnerWhoSeesTheOtherWardAndCallThere() {
    house.accounts.put("c.two", "Charge Two", AccountRole.CHARGE, WardScope.EVERY_WARD);
    var id = owned("V-1");

    move("V-1", "B", 2);

    assertThat(house.unfit.look()).isZero();
    assertThat(episode(id).owner()).isEqualTo("c.two");
    assertThat(newestNotice(id)).isEqualTo(last(id).sequence());
  }

  @Test
  void shouldCallNobodyForAnotherBedOfTheSameWard() {
    var id = owned("V-1");
    var before = newestNotice(id);

    house.intake.take(List.of(new News.BedMove(stay("V-1", "A", "7", 2))));

    assertThat(last(id).kind()).isEqualTo("moved");
    assertThat(episode(id).state()).isEqualTo(EpisodeState.ACKNOWLEDGED);
    assertThat(newestNotice(id)).isEqualTo(before);
  }

  @Test
  void shouldLetAHoldRestInTheOtherWardUnlessItsSignerMayNotOpenItsPages() {
    house.accounts.put("c.two", "Charge Two", AccountRole.CHARGE, WardScope.EVERY_WARD);
    var id = owned("V-1");
    var until = house.clock.instant().plus(Duration.ofHours(1));
    house.desk.act(
        new Request(id, Action.HOLD, null, null, "dying, comfort only", null, until),
        People.CHARGE);

    move("V-1", "B", 2);
    house.unfit.look();
    assertThat(episode(id).state()).isEqualTo(EpisodeState.HELD);
    house.accounts.put("c.two", "Charge Two", AccountRole.CHARGE, WARD_A);
    house.unfit.look();

    assertThat(last(id).kind()).isEqualTo("owner-left");
    assertThat(newestNotice(id)).isEqualTo(last(id).sequence());
  }

  private String owned(String encounter) {
    var id = opened(encounter, "A").id();
    house.desk.act(request(id, Action.ACKNOWLEDGE, null), People.CHARGE);
    return id;
  }

  private Answer handOver(String id, String to) {
    return house.desk.act(request(id, Action.HAND_OVER, to), People.CHARGE);
  }

  private static Request request(String id, Action action, @Nullable String to) {
    return new Request(id, action, null, null, null, to, null);
  }

  private void begin(Actor actor, String ward, Duty duty, String... beds) {
    var begin =
        new ShiftDesk.Begin(ward, duty, actor.account(), actor.name(), Set.of(beds), null, null);
    assertThat(house.shifts.begin(begin, actor)).isInstanceOf(ShiftDesk.Answer.Done.class);
  }

  private ShiftDesk.Answer beginning(String account, String ward, Duty duty) {
    return house.shifts.begin(
        new ShiftDesk.Begin(ward, duty, account, "", Set.of(), null, null), People.CHARGE);
  }

  private Episode opened(String encounter, String ward) {
    house.intake.take(List.of(new News.BedMove(stay(encounter, ward, "1", 1))));
    house.intake.take(
        List.of(new News.Picture(Pictures.of(encounter, TestHouse.START).score(8).build())));
    return house.desk.running(encounter).orElseThrow();
  }

  private void move(String encounter, String ward, long version) {
    house.intake.take(List.of(new News.BedMove(stay(encounter, ward, "2", version))));
  }

  private static Encounter stay(String encounter, String ward, String bed, long version) {
    Instant admitted = TestHouse.START.minus(Duration.ofDays(1));
    return new Encounter(
        encounter,
        new Patient("P-" + encounter, null, null, null),
        List.of(new Stay(ward, bed, admitted)),
        admitted,
        null,
        null,
        version);
  }

  private Episode episode(String id) {
    return house.desk.find(id).orElseThrow();
  }

  private EpisodeChange last(String id) {
    var story = house.desk.story(id);
    return story.get(story.size() - 1);
  }

  private long newestNotice(String id) {
    return house.database.read(
        handle ->
            handle
                .createQuery("SELECT max(sequence) FROM alerts.notice WHERE episode = :id")
                .bind("id", id)
                .mapTo(Long.class)
                .one());
  }
}
