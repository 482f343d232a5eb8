package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Call.Caller;
import org.driftward.alerts.contract.Call.CallerRole;
import org.driftward.alerts.contract.Call.Disposition;
import org.driftward.alerts.contract.Call.Ending;
import org.driftward.alerts.contract.Call.Moment;
import org.driftward.alerts.contract.Call.Point;
import org.driftward.alerts.contract.Call.Signs;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.Call.TreatmentKind;
import org.driftward.alerts.contract.CallDesk.Answer;
import org.driftward.alerts.contract.CallDesk.Entry;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Journal;
import org.driftward.alerts.store.Intake.News;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * A call from its first word to its end, on a real PostgreSQL. The fields are those that the
 * Utstein-style statement on rapid-response calls asks for (Peberdy 2007, from memory).
 */
class CallTest {

  private static final Actor NEXT = new Actor("r.nine", "Response Nine", People.RESPONSE.roles());

  private final TestHouse house = new TestHouse();

  @Test
  void shouldRecordACallFromTriggerToDisposition() {
    var id = opened("V-1");
    house.clock.forward(Duration.ofMinutes(3));
    record(id, new Entry.Reached(Step.RECEIVED, null));
    house.clock.forward(Duration.ofMinutes(6));
    picture("V-1", 9);
    record(id, new Entry.Reached(Step.AT_BEDSIDE, null));
    record(id, new Entry.Present(Set.of("registrar", "critical-care nurse")));
    record(id, new Entry.Treated(TreatmentKind.OXYGEN, "4 L/min", null));
    house.clock.forward(Duration.ofMinutes(30));
    picture("V-1", 4);
    var ending = new Ending(Disposition.STAYED_WITH_PLAN, "hourly sets", "ward nurse", in(30));

    var call = record(id, new Entry.Finished(ending, null));

    assertThat(call.finished()).isTrue();
    assertThat(call.moments())
        .extracting(Moment::step)
        .containsExactly(Step.RECEIVED, Step.AT_BEDSIDE, Step.FINISHED);
    assertThat(call.signs())
        .extracting(Signs::point, Signs::score)
        .containsExactly(
            tuple(Point.TRIGGER, "NEWS2 8"),
            tuple(Point.ARRIVAL, "NEWS2 9"),
            tuple(Point.END, "NEWS2 4"));
    assertThat(call.leadName()).isEqualTo("Response Three");
    assertThat(house.calls.list(Set.of("A"), TestHouse.START, in(1))).hasSize(1);
    assertThat(journal("call/" + id))
        .containsExactly("reached", "reached", "present", "treated", "finished");
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldMoveTheEpisodeWithTheCall() {
    var id = opened("V-2");

    record(id, new Entry.Reached(Step.RECEIVED, null));
    assertThat(house.desk.find(id).orElseThrow().state()).isEqualTo(EpisodeState.ACKNOWLEDGED);
    record(id, new Entry.Reached(Step.AT_BEDSIDE, null));
    assertThat(house.desk.find(id).orElseThrow().state()).isEqualTo(EpisodeState.ATTENDED);
    record(id, new Entry.HandedOver("r.nine", "Response Nine", "bloods are out"));

    assertThat(house.desk.find(id).orElseThrow().owner()).isEqualTo("r.nine");
    assertThat(house.calls.find(id).orElseThrow().lead()).isEqualTo("r.nine");
  }

  @Test
  void shouldKeepBothTimesOfALateEntry() {
    var id = opened("V-3");
    house.clock.forward(Duration.ofMinutes(40));

    var call = record(id, new Entry.Reached(Step.AT_BEDSIDE, TestHouse.START.plusSeconds(300)));

    assertThat(call.moment(Step.AT_BEDSIDE))
        .contains(
            new Moment(
                Step.AT_BEDSIDE,
                TestHouse.START.plusSeconds(300),
                house.clock.instant(),
                "r.three"));
  }

  /** M7 of practice.md (Subbe 2019) counts calls by the patient or the family. */
  @Test
  void shouldKeepWhoCalled() {
    var id = opened("V-7");
    assertThat(record(id, new Entry.Reached(Step.CALLED, null)).caller()).isNull();

    record(id, new Entry.CalledBy(new Caller(CallerRole.NURSE, null)));
    var call = record(id, new Entry.CalledBy(new Caller(CallerRole.FAMILY, "her daughter")));

    assertThat(call.caller()).isEqualTo(new Caller(CallerRole.FAMILY, "her daughter"));
    assertThat(house.calls.find(id).orElseThrow().caller()).isEqualTo(call.caller());
    assertThat(journal("call/" + id)).containsExactly("reached", "called-by", "called-by");
  }

  @Test
  void shouldRefuseWhatMakesNoSense() {
    var id = opened("V-4");
    record(id, new Entry.Reached(Step.AT_BEDSIDE, null));

    assertThat(refused(id, new Entry.Reached(Step.CALLED, in(1)))).isEqualTo("at");
    assertThat(refused(id, finished(Disposition.STAYED_WITH_PLAN, null, in(60)))).isEqualTo("plan");
    assertThat(refused(id, finished(Disposition.STAYED_WITH_PLAN, "sets", null)))
        .isEqualTo("nextSet");
    assertThat(refused(id, new Entry.Reached(Step.FINISHED, null))).isEqualTo("disposition");
    assertThat(house.calls.record("E-0", new Entry.Present(Set.of()), NEXT))
        .isInstanceOf(Answer.Unknown.class);
    assertThat(house.calls.record(id, new Entry.Present(Set.of()), People.MANAGER))
        .isInstanceOf(Answer.NotAllowed.class);
  }

  @Test
  void shouldEndOnceButTakeLateEntriesAfterwards() {
    var id = opened("V-5");
    record(id, finished(Disposition.HIGHER_CARE, null, null));

    assertThat(house.calls.record(id, finished(Disposition.DIED, null, null), People.RESPONSE))
        .isInstanceOf(Answer.NoLongerApplies.class);
    var call = record(id, new Entry.Treated(TreatmentKind.FLUIDS, "500 mL", TestHouse.START));

    assertThat(call.treatments()).hasSize(1);
    assertThat(call.ending().disposition()).isEqualTo(Disposition.HIGHER_CARE);
  }

  @Test
  void shouldKeepWhatTheAuditCounts() {
    opened("V-6");
    house.clock.forward(Duration.ofMinutes(10));
    var at = TestHouse.START.plusSeconds(120);

    var arrest =
        house.events.record(
            "V-6", "A", ClinicalEvent.Kind.ARREST, at, false, false, null, People.RESPONSE);

    assertThat(house.events.of("V-6")).containsExactly(arrest);
    assertThat(house.events.list(Set.of("A"), TestHouse.START, in(0))).containsExactly(arrest);
    assertThat(house.events.list(Set.of("B"), TestHouse.START, in(0))).isEmpty();
    assertThat(journal("encounter/V-6")).containsExactly("event");
    var now =
        house.events.record(
            "V-6", "A", ClinicalEvent.Kind.INTERVENTION, null, false, false, "x", People.RESPONSE);
    assertThat(now.at()).isEqualTo(now.enteredAt());
    assertThatThrownBy(
            () ->
                house.events.record(
                    "V-6", "A", ClinicalEvent.Kind.DEATH, in(5), true, true, null, People.RESPONSE))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static Entry.Finished finished(
      Disposition where, @Nullable String plan, @Nullable Instant nextSet) {
    return new Entry.Finished(new Ending(where, plan, null, nextSet), null);
  }

  private String refused(String id, Entry entry) {
    return ((Answer.Incomplete) house.calls.record(id, entry, People.RESPONSE)).field();
  }

  private Call record(String id, Entry entry) {
    return ((Answer.Done) house.calls.record(id, entry, People.RESPONSE)).call();
  }

  private Instant in(int minutes) {
    return house.clock.instant().plus(Duration.ofMinutes(minutes));
  }

  private List<String> journal(String subject) {
    return house.journal.after(0, 1000).stream()
        .filter(entry -> entry.subject().equals(subject))
        .map(Journal.Entry::kind)
        .toList();
  }

  private String opened(String encounter) {
    house.intake.take(List.of(new News.BedMove(HandoverTest.encounter(encounter))));
    picture(encounter, 8);
    return house.desk.running(encounter).orElseThrow().id();
  }

  private Snapshot picture(String encounter, int score) {
    var picture = Pictures.of(encounter, house.clock.instant()).score(score).build();
    house.record.add(picture);
    house.intake.take(List.of(new News.Picture(picture)));
    return picture;
  }
}
