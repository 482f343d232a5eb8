package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.Policies;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Contact;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.Journal;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.ShiftDesk.Answer;
import org.driftward.alerts.contract.ShiftDesk.Begin;
import org.driftward.alerts.core.outreach.Outcome;
import org.driftward.alerts.core.outreach.Parcel;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.alerts.store.Intake.News;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** From an alarm to its deliveries and back to the ladder, on a real PostgreSQL. */
@Timeout(120)
class DeliveryFlowTest {

  private static final String EPISODE = "E-V-1-1";
  private static final Outcome NO_LINE = new Outcome.Failed("no connection", null);

  private final TestHouse house =
      new TestHouse(
          PolicyFile.parse("test", Policies.outreach()), new Reach(true, Set.of("pagers")));
  private final List<Parcel> carried = new ArrayList<>();

  @Test
  void shouldPlanEveryDeliveryWithTheAlarm() {
    ill("V-1");

    assertThat(house.told.of(EPISODE))
        .extracting(Delivery::channel, Delivery::recipient, Delivery::state)
        .containsExactlyInAnyOrder(
            tuple(Channel.MAIL, "Charge phone", State.WAITING),
            tuple(Channel.MAIL, "response team", State.NOT_SENT),
            tuple(Channel.WEBHOOK, "Team pager", State.WAITING),
            tuple(Channel.WEBHOOK, "charge nurse", State.NOT_SENT));
  }

  @Test
  void shouldTellWhoeverIsOnDutyWhenTheAlarmIsRaised() {
    var contact = new Contact("two@ward.example", "pagers", "4711");
    var begin =
        new Begin("unassigned", Duty.CHARGE, "c.two", "Charge Two", Set.of(), null, null, contact);
    assertThat(house.shifts.begin(begin, People.CHARGE)).isInstanceOf(Answer.Done.class);

    ill("V-1");
    send(Channel.MAIL, new Outcome.Taken());

    assertThat(carried).extracting(Parcel::address).containsExactly("two@ward.example");
    assertThat(house.told.of(EPISODE))
        .extracting(Delivery::channel, Delivery::recipient, Delivery::state)
        .contains(
            tuple(Channel.MAIL, "Charge Two", State.DELIVERED),
            tuple(Channel.WEBHOOK, "Charge Two", State.WAITING),
            tuple(Channel.WEBHOOK, "Team pager", State.WAITING));
    assertThat(house.shifts.running("unassigned"))
        .extracting(Shift::contact)
        .containsExactly(contact);
  }

  @Test
  void shouldRefuseADutyThatIsToldByAWebhookNobodyConfigured() {
    var contact = new Contact(null, "carrier-pigeon", null);
    var begin =
        new Begin("unassigned", Duty.CHARGE, "c.two", "Charge Two", Set.of(), null, null, contact);

    assertThat(house.shifts.begin(begin, People.CHARGE))
        .isEqualTo(new Answer.Incomplete("webhook", "is not one that is configured"));
  }

  @Test
  void shouldSayWhenAFailedDeliveryIsTriedAgain() {
    ill("V-1");
    send(Channel.MAIL, NO_LINE);

    assertThat(house.told.of(EPISODE))
        .filteredOn(one -> one.state() == State.FAILED)
        .extracting(Delivery::attempts, Delivery::why, Delivery::next)
        .containsExactly(tuple(1, "no connection", TestHouse.START.plus(Duration.ofMillis(3_750))));
  }

  @Test
  void shouldSendWhatTheJournalHasAndKeepInTheJournalWhatWasSent() {
    ill("V-1");

    send(Channel.MAIL, new Outcome.Taken());
    send(Channel.WEBHOOK, new Outcome.Taken());

    var alarm = house.desk.story(EPISODE).get(0);
    assertThat(carried).extracting(Parcel::alarm).containsOnly(alarm).hasSize(2);
    assertThat(kinds("notice/" + alarm.sequence()))
        .containsExactly("not-sent", "not-sent", "delivered", "delivered");
    assertThat(house.journal.check().sound()).isTrue();
    assertThat(house.deliveries.attempt(Channel.MAIL, this::never)).isEmpty();
  }

  @Test
  void shouldTryAgainAfterThePauseWithTheSameKey() {
    ill("V-1");
    send(Channel.MAIL, NO_LINE);
    house.clock.forward(Duration.ofMillis(3_749));
    assertThat(house.deliveries.attempt(Channel.MAIL, this::never)).isEmpty();

    house.clock.forward(Duration.ofMillis(1));
    var state = send(Channel.MAIL, new Outcome.Taken());

    assertThat(state).isEqualTo(State.DELIVERED);
    assertThat(carried).extracting(Parcel::key).hasSize(2).containsOnly(carried.get(0).key());
  }

  @Test
  void shouldClimbAtOnceWhenAnAudienceCannotBeReached() {
    ill("V-1");

    send(Channel.MAIL, new Outcome.Refused("the mail server refused it, 550"));

    assertThat(house.failed.climb(10)).isEqualTo(1);
    assertThat(house.failed.climb(10)).isZero();
    assertThat(house.desk.story(EPISODE))
        .extracting(EpisodeChange::kind, EpisodeChange::reason)
        .containsExactly(
            tuple("opened", null), tuple("escalated", "no message reached the charge nurse"));
  }

  @Test
  void shouldNotClimbWhileAnotherAttemptMayReachThem() {
    ill("V-1");

    send(Channel.MAIL, NO_LINE);

    assertThat(house.failed.climb(10)).isZero();
    assertThat(house.desk.story(EPISODE)).hasSize(1);
  }

  @Test
  void shouldNotClimbTwiceWhenTheClockWasFaster() {
    ill("V-1");
    send(Channel.MAIL, new Outcome.Refused("the mail server refused it, 550"));
    house.clock.forward(Duration.ofMinutes(5));
    house.due.fire(10);

    assertThat(house.failed.climb(10)).isZero();
    assertThat(house.desk.story(EPISODE)).extracting(EpisodeChange::kind).hasSize(2);
  }

  @Test
  void shouldWithdrawWhatSomebodyAnsweredBefore() {
    ill("V-1");
    house.desk.act(
        new Request(EPISODE, Action.ACKNOWLEDGE, null, null, null, null, null), People.CHARGE);

    assertThat(house.deliveries.attempt(Channel.MAIL, this::never)).contains(State.WITHDRAWN);
    assertThat(house.failed.climb(10)).isZero();
  }

  @Test
  void shouldSendNothingOfATransactionThatDied() {
    ill("V-1");
    var died =
        catchThrowable(
            () ->
                house.deliveries.attempt(
                    Channel.MAIL,
                    parcel -> {
                      throw new AssertionError("the process dies while sending");
                    }));

    assertThat(died).isNotNull();
    assertThat(send(Channel.MAIL, new Outcome.Taken())).isEqualTo(State.DELIVERED);
  }

  @Test
  void shouldGiveEachDeliveryToOneOfManySenders() throws Exception {
    int patients = 20;
    IntStream.range(0, patients).forEach(i -> ill("V-" + i));
    Map<String, AtomicInteger> sent = new ConcurrentHashMap<>();
    var pool = Executors.newFixedThreadPool(4);

    var running =
        IntStream.range(0, 4)
            .mapToObj(
                i ->
                    pool.submit(
                        () -> {
                          for (int n = 0; n < patients; n++) {
                            house.deliveries.attempt(
                                Channel.WEBHOOK, parcel -> count(sent, parcel));
                          }
                          return true;
                        }))
            .toList();
    for (var one : running) {
      one.get();
    }
    pool.shutdown();

    assertThat(sent).hasSize(patients);
    assertThat(sent.values()).allSatisfy(times -> assertThat(times).hasValue(1));
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldKeepThatAPageSoundedOnceForEachAccount() {
    ill("V-1");
    var tone = house.told.tones(null).get(0);

    assertThat(house.told.sounded(tone.notice(), People.CHARGE, null)).isTrue();
    assertThat(house.told.sounded(tone.notice(), People.CHARGE, null)).isTrue();
    assertThat(house.told.sounded(tone.notice(), People.CHARGE, Set.of("elsewhere"))).isFalse();

    assertThat(house.told.of(EPISODE))
        .filteredOn(one -> one.channel() == Channel.TONE)
        .extracting(Delivery::recipient, Delivery::state)
        .containsExactly(tuple("page of Charge Two", State.DELIVERED));
  }

  @Test
  void shouldSoundForAlarmsThatNobodyHasAnswered() {
    ill("V-1");
    ill("V-2");
    house.desk.act(
        new Request(EPISODE, Action.ACKNOWLEDGE, null, null, null, null, null), People.CHARGE);

    assertThat(house.told.tones(null)).extracting("episode").containsExactly("E-V-2-1");
    assertThat(house.told.tones(Set.of("elsewhere"))).isEmpty();
  }

  @Test
  void shouldNameAChannelThatThePolicyAsksForAndNobodyConfigured() {
    var off =
        new TestHouse(
            PolicyFile.parse("test", Policies.outreach()), new Reach(false, Set.of("pagers")));

    assertThat(off.told.channelsOff())
        .containsExactly("The policy tells people by mail, which is not configured");
    assertThat(house.told.channelsOff()).isEmpty();
  }

  private void ill(String encounter) {
    house.intake.take(
        List.of(new News.Picture(Pictures.of(encounter, TestHouse.START).score(8).build())));
  }

  private State send(Channel channel, Outcome outcome) {
    return house
        .deliveries
        .attempt(
            channel,
            parcel -> {
              carried.add(parcel);
              return outcome;
            })
        .orElseThrow();
  }

  private Outcome never(Parcel parcel) {
    throw new AssertionError("sent " + parcel);
  }

  private static Outcome count(Map<String, AtomicInteger> sent, Parcel parcel) {
    sent.computeIfAbsent(parcel.key(), key -> new AtomicInteger()).incrementAndGet();
    return new Outcome.Taken();
  }

  private List<String> kinds(String subject) {
    return house.journal.after(0, 1000).stream()
        .filter(entry -> entry.subject().equals(subject))
        .map(Journal.Entry::kind)
        .toList();
  }
}
