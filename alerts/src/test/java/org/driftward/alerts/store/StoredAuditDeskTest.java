package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.driftward.alerts.store.TestHouse.START;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditEvent.Kind;
import org.driftward.alerts.contract.AuditEvent.Place;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.CareHistory;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.store.Intake.News;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The measures from a real journal: what happened in the house is what is counted. */
class StoredAuditDeskTest {

  private static final AuditQuestion DAY =
      AuditQuestion.of(null, START.minus(Duration.ofHours(1)), START.plus(Duration.ofDays(1)));

  private final List<Snapshot> seen = new ArrayList<>();
  private final TestHouse house = new TestHouse();
  private final StoredAuditDesk audit = house.audit(new Remembered());

  @Test
  void shouldCountWhatTheJournalTells() {
    see(8);
    house.clock.forward(Duration.ofMinutes(4));
    acknowledge();
    house.clock.set(START.plus(Duration.ofHours(6)));

    var answer = figure("time-to-acknowledge", "Time, median");

    assertThat(answer.value()).isEqualTo(4);
    assertThat(answer.counted()).containsExactly("episode/E-V-1-1");
    assertThat(figure("M20", "Alarms per patient-day").numerator()).isEqualTo(1);
    assertThat(figure("M3", "Within 15 min").numerator()).isEqualTo(1);
  }

  @Test
  void shouldKeepEventsInTheJournalAndTakeThemBack() {
    var event = event("X-1", Kind.ARREST);
    audit.record(event, People.MANAGER);

    assertThat(audit.events(null, START, START.plusSeconds(3600))).containsExactly(event);
    assertThat(figure("M10", "Outside intensive care").denominator()).isEqualTo(1);
    assertThat(audit.withdraw("X-1", "entered for the wrong patient", People.MANAGER)).isTrue();
    assertThat(audit.withdraw("X-1", "again", People.MANAGER)).isFalse();

    assertThat(audit.events(null, START, START.plusSeconds(3600))).isEmpty();
    assertThat(house.journal.after(0, 10))
        .extracting(entry -> entry.subject() + " " + entry.kind())
        .containsExactly("audit-event/X-1 recorded", "audit-event/X-1 withdrawn");
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldTryAnEditedPolicyOnTheRecord() {
    see(5);
    house.clock.set(START.plus(Duration.ofHours(2)));
    var laxer = audit.policyInForce().replace("{at: 5, level: medium,", "{at: 6, level: medium,");

    var trial = audit.trial(laxer, DAY);

    assertThat(trial.inForce().episodes()).isEqualTo(1);
    assertThat(trial.edited().episodes()).isZero();
    assertThat(trial.missed()).hasSize(1);
    // A trial is a look back: the house itself stays as it was.
    assertThat(house.journal.after(0, 10)).hasSize(1);
  }

  @Test
  void shouldRefuseAPolicyThatIsNone() {
    var misspelt =
        audit.policyInForce().replace("  longest-hold:", "  surprise: 1\n  longest-hold:");

    assertThatThrownBy(() -> audit.trial(misspelt, DAY))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("surprise");
  }

  private void see(int score) {
    var picture = Pictures.of("V-1", START).score(score).build();
    seen.add(picture);
    house.intake.take(List.of(new News.Picture(picture)));
  }

  private void acknowledge() {
    house.desk.act(
        new Request("E-V-1-1", Action.ACKNOWLEDGE, null, null, null, null, null), People.CHARGE);
  }

  private Figure figure(String measure, String name) {
    return audit.report(DAY).measures().stream()
        .filter(one -> one.id().equals(measure))
        .flatMap(one -> one.figures().stream())
        .filter(figure -> figure.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static AuditEvent event(String id, Kind kind) {
    return new AuditEvent(
        id, kind, START, "heron", "V-1", Place.WARD, false, false, null, null, null, null);
  }

  /** One patient who lies there all day, and the pictures that were seen. */
  private final class Remembered implements CareHistory {
    @Override
    public List<Stay> stays(@Nullable Set<String> wards, Instant from, Instant to) {
      return List.of(new Stay("V-1", "P-1", "heron", from, null, false, false));
    }

    @Override
    public List<ObservedSet> sets(Set<String> encounters, Instant from, Instant to) {
      return List.of();
    }

    @Override
    public List<Snapshot> snapshots(String encounter, Instant from, Instant to) {
      return List.copyOf(seen);
    }
  }
}
