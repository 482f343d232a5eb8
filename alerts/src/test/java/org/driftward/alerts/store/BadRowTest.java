package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.Policies;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.ShiftDesk.Answer;
import org.driftward.alerts.contract.ShiftDesk.Begin;
import org.driftward.alerts.core.outreach.Outcome;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.alerts.store.Intake.News;
import org.driftward.ground.store.Quarantine.Told;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** One row that nobody can read stands beside others, on a real PostgreSQL. */
@Timeout(120)
class BadRowTest {

  private final TestHouse house =
      new TestHouse(
          PolicyFile.parse("test", Policies.outreach()), new Reach(true, Set.of("pagers")));

  @BeforeEach
  void threeAreIll() {
    for (var encounter : List.of("V-1", "V-2", "V-3")) {
      house.intake.take(
          List.of(new News.Picture(Pictures.of(encounter, TestHouse.START).score(8).build())));
    }
  }

  @Test
  void shouldLetTheOtherLaddersClimb() {
    unreadableCourse();
    house.clock.forward(Duration.ofMinutes(5));

    assertThat(house.due.fire(1)).isZero();
    assertThat(house.due.fire(50)).isEqualTo(2);

    assertThat(rungs("V-2", "V-3")).containsExactly(1, 1);
    assertThat(house.quarantine.told())
        .extracting(Told::part, Told::subject)
        .containsExactly(tuple("ladder-clock", "V-1"));
  }

  @Test
  void shouldTakeUpARowThatWasMended() {
    unreadableCourse();
    house.clock.forward(Duration.ofMinutes(5));
    house.due.fire(50);
    stateOf("V-1", "open");

    house.clock.forward(Duration.ofSeconds(59));
    assertThat(house.due.fire(50)).isZero();
    house.clock.forward(Duration.ofSeconds(1));
    assertThat(house.due.fire(50)).isEqualTo(1);

    assertThat(rungs("V-1")).containsExactly(1);
    house.clock.forward(Duration.ofMinutes(2));
    assertThat(house.quarantine.told()).isEmpty();
  }

  @Test
  void shouldKeepTheBytesOfWhatIsSetAside() {
    unreadableCourse();
    house.clock.forward(Duration.ofMinutes(5));
    house.due.fire(50);

    var kept =
        house.database.read(
            handle ->
                handle
                    .createQuery(
                        "SELECT convert_from(payload, 'UTF8') FROM ground.quarantine"
                            + " WHERE place = 'alerts.course/V-1'")
                    .mapTo(String.class)
                    .one());
    assertThat(kept).contains("\"encounter\": \"V-1\"", "pondering");
  }

  @Test
  void shouldEndTheOtherDutiesAndRaiseAlarmsBesideADutyNobodyCanRead() {
    comeOnDuty("c.one", Duty.CHARGE);
    comeOnDuty("b.one", Duty.BEDSIDE);
    TestHouse.execute(
        house.owner,
        "UPDATE alerts.shift SET body = jsonb_set(body, '{duty}', '\"gardener\"')"
            + " WHERE account = 'c.one'");
    house.clock.forward(Duration.ofHours(24));

    house.shiftEnds.look();

    assertThat(house.shifts.running("unassigned")).isEmpty();
    assertThat(house.quarantine.told())
        .extracting(Told::part, Told::area)
        .containsExactly(tuple("shift-clock", "unassigned"));
    house.due.fire(50);
    assertThat(rungs("V-1", "V-2", "V-3")).containsExactly(1, 1, 1);
  }

  @Test
  void shouldTellTheLadderOfOtherFailures() {
    refuseAllMail();
    TestHouse.execute(
        house.owner,
        "UPDATE alerts.delivery SET audiences = '{bystander}' WHERE channel = 'mail' AND notice ="
            + " (SELECT sequence FROM alerts.notice WHERE encounter = 'V-2')");
    unreadableCourse();

    assertThat(house.failed.climb(50)).isEqualTo(1);

    assertThat(rungs("V-3")).containsExactly(1);
    assertThat(house.quarantine.told()).extracting(Told::subject).containsExactly("V-1", "V-2");
  }

  @Test
  void shouldSendTheOtherMessages() {
    TestHouse.execute(
        house.owner,
        "ALTER TABLE alerts.delivery DROP CONSTRAINT what_is_not_settled_is_tried_again;"
            + " UPDATE alerts.delivery SET state = 'pondering' WHERE channel = 'mail' AND notice ="
            + " (SELECT sequence FROM alerts.notice WHERE encounter = 'V-1') AND next IS NOT NULL");

    assertThat(sent()).containsExactlyInAnyOrder("V-2", "V-3");
  }

  private void unreadableCourse() {
    stateOf("V-1", "pondering");
  }

  private void stateOf(String encounter, String state) {
    TestHouse.execute(
        house.owner,
        "UPDATE alerts.course SET body = jsonb_set(body, '{episode,standing,state}',"
            + " '\"%s\"') WHERE encounter = '%s'".formatted(state, encounter));
  }

  private void comeOnDuty(String account, Duty duty) {
    var begin =
        new Begin("unassigned", duty, account, "Person " + account, Set.of(), null, null, null);
    assertThat(house.shifts.begin(begin, People.CHARGE)).isInstanceOf(Answer.Done.class);
  }

  private void refuseAllMail() {
    for (int i = 0; i < 3; i++) {
      house.deliveries.attempt(Channel.MAIL, parcel -> new Outcome.Refused("refused, 550"));
    }
  }

  private List<String> sent() {
    var sent = new ArrayList<String>();
    for (int i = 0; i < 4; i++) {
      house.deliveries.attempt(
          Channel.MAIL,
          parcel -> {
            sent.add(parcel.alarm().episode().encounter());
            return new Outcome.Taken();
          });
    }
    return sent;
  }

  private List<Integer> rungs(String... encounters) {
    var list = house.desk.list(null, Set.of(), null);
    return List.of(encounters).stream()
        .map(
            encounter ->
                list.stream()
                    .filter(one -> one.encounter().equals(encounter))
                    .map(Episode::rung)
                    .findFirst()
                    .orElseThrow())
        .toList();
  }
}
