package org.driftward.alerts.core.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditEvent.Kind;
import org.driftward.alerts.contract.AuditEvent.Place;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.PolicyTrial.Raised;
import org.driftward.alerts.core.audit.Trial.Run;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.alerts.core.trigger.Wording;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.Test;

/** One patient whose course is short enough to follow by hand, under two policies. */
class ReplayTest {

  private static final Instant START = Instant.parse("2026-01-05T03:00:00Z");
  private static final Instant END = START.plus(Duration.ofHours(4));
  private static final List<Stay> STAY =
      List.of(new Stay("V-1", "P-1", "heron", START, null, true, false));

  /** A 5 at 03:00 and calm sets afterwards: medium by the shipped policy, nothing from 6 on. */
  private static final List<Snapshot> FIVE =
      List.of(picture(0, 5), picture(55, 1), picture(110, 1), picture(165, 1));

  private final EscalationPolicy shipped = PolicyFile.shipped().policy();
  private final EscalationPolicy laxer =
      PolicyFile.parse(
              "laxer",
              PolicyFile.shipped()
                  .text()
                  .replace("{at: 5, level: medium,", "{at: 6, level: medium,")
                  .replace("version: shipped-1", "version: laxer"))
          .policy();

  @Test
  void shouldLiveThroughTheRecordAsItWasWithPeopleWhoComeHalfWay() {
    var changes = run(shipped);

    assertThat(changes)
        .extracting(EpisodeChange::kind)
        .containsExactly("opened", "escalated", "attended", "reassessed", "reassessed", "closed");
    // Calm for 55 min at the third set and for 110 at the fourth; recovery must last an hour.
    // Medium: 15 min for an answer, and at the bedside within 60; half of that is 30.
    assertThat(changes.get(1).at()).isEqualTo(START.plus(Duration.ofMinutes(15)));
    assertThat(changes.get(2).at()).isEqualTo(START.plus(Duration.ofMinutes(30)));
  }

  @Test
  void shouldSayWhatAnotherPolicyWouldHaveMissed() {
    var event =
        new AuditEvent(
            "X-1",
            Kind.INTENSIVE_CARE_MOVE,
            START.plus(Duration.ofMinutes(210)),
            "heron",
            "V-1",
            Place.WARD,
            false,
            false,
            null,
            null,
            null,
            null);

    var trial =
        Trial.compare(
            new Run("shipped-1", run(shipped)),
            new Run("laxer", run(laxer)),
            List.of(event),
            0.5,
            END);

    assertThat(trial.inForce().episodes()).isEqualTo(1);
    assertThat(trial.inForce().alarmsPer100BedDays()).isEqualTo(200);
    assertThat(trial.edited().episodes()).isZero();
    assertThat(trial.missed()).extracting(Raised::encounter).containsExactly("V-1");
    assertThat(trial.added()).isEmpty();
    assertThat(trial.eventsInForce()).isEqualTo(1);
    assertThat(trial.eventsEdited()).isZero();
    assertThat(trial.events()).isEqualTo(1);
  }

  @Test
  void shouldEndWithTheStay() {
    var left = START.plus(Duration.ofMinutes(10));
    var stay = List.of(new Stay("V-1", "P-1", "heron", START, left, true, true));

    var changes =
        new Replay(escalation(shipped), "V-1", 0.5).run(stay, List.of(), FIVE.subList(0, 1), END);

    assertThat(changes).extracting(EpisodeChange::kind).containsExactly("opened", "closed");
  }

  private List<EpisodeChange> run(EscalationPolicy policy) {
    return new Replay(escalation(policy), "V-1", 0.5).run(STAY, List.of(), FIVE, END);
  }

  private static Snapshot picture(int minutes, int score) {
    return Pictures.of("V-1", START.plus(Duration.ofMinutes(minutes))).score(score).build();
  }

  private static Escalation escalation(EscalationPolicy policy) {
    var catalogue = Catalogue.shipped();
    return new Escalation(
        policy, new Triggers(policy.triggers(), catalogue, new Wording(catalogue, ZoneOffset.UTC)));
  }
}
