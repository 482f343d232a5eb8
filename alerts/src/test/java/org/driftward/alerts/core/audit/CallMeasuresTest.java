package org.driftward.alerts.core.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.alerts.core.audit.Ward.START;
import static org.driftward.alerts.core.audit.Ward.at;
import static org.driftward.ingest.contract.Level.HIGH;

import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.AuditEvent.Kind;
import org.driftward.alerts.contract.AuditEvent.Place;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.Call.Caller;
import org.driftward.alerts.contract.Call.CallerRole;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * The measures of calls, on wards small enough to count by hand. Definitions: practice.md section
 * 1, after Subbe 2019 where no other source is named.
 */
class CallMeasuresTest {

  private static final String SERVICE = "driftward";

  private final Ward ward = new Ward();

  /** Calls 10, 20 and 90 min after the first trigger, two of them of one patient. */
  @Test
  void shouldCountTheTeamsCalls() {
    ward.stay("V-1", 1, true).stay("V-2", 2, true).stay("V-3", 3, true).stay("V-4", 9, true);
    ward.call("V-1", 10);
    ward.call("V-2", 20);
    ward.call("V-2", 90);

    assertFigure(ward.figure("M3", "Within 15 min"), 1, 3, 100.0 / 3);
    assertFigure(ward.figure("M3", "Within 60 min"), 2, 3, 200.0 / 3);
    assertFigure(ward.figure("M11", "Calls per 1000 separations"), 3, 4, 750);
    assertFigure(ward.figure("M17", "Called twice or more"), 1, 2, 50);
  }

  @Test
  void shouldTakeTheTeamsRecordForWhatOnlyItTells() {
    ward.calls.add(
        new Call(
            "E-V-1",
            "V-1",
            "heron",
            START,
            at(5),
            new Call.Report(at(30), true, true, false, true, false, true, at(10), at(70))));

    assertFigure(ward.figure("M5", "With a critical intervention within 24 h"), 1, 1, 100);
    assertFigure(ward.figure("M6", "With a written plan"), 0, 1, 0);
    assertFigure(ward.figure("M7", "Called by patient or family"), 1, 1, 100);
    assertFigure(ward.figure("M9", "Team hours per call"), 1, 1, 1);
    assertFigure(ward.figure("M18", "Set at the call"), 1, 1, 100);
  }

  /** Three calls, of two of which it is known who called, one of them by the family: 1 of 2. */
  @Test
  void shouldCountCallsByThePatientsSideAmongThoseWhoseCallerIsKnown() {
    var records =
        List.of(
            record("V-1", new Caller(CallerRole.FAMILY, null)),
            record("V-2", new Caller(CallerRole.NURSE, null)),
            record("V-3", null));

    ward.calls.addAll(TeamCalls.of(List.of(), records));

    assertFigure(ward.figure("M7", "Called by patient or family"), 1, 2, 50);
    assertThat(ward.figure("M7", "Called by patient or family").counted())
        .containsExactly("episode/E-V-1");
  }

  @Test
  void shouldSayThatNobodyWroteDownWhoCalled() {
    ward.calls.addAll(TeamCalls.of(List.of(), List.of(record("V-1", null))));

    assertThat(ward.measure("M7").lacking()).contains("who called");
  }

  /** Within 24 h of the call at minute 5 lies minute 1445, and not 1446. */
  @Test
  void shouldTakeAnInterventionAtTheBedsideForOneOfTheCall() {
    for (var encounter : List.of("V-1", "V-2")) {
      ward.change(encounter, "opened", 5, HIGH, SERVICE);
      ward.calls.add(
          new Call(
              "E-" + encounter,
              encounter,
              "heron",
              START,
              at(5),
              new Call.Report(null, false, true, true, null, false, false, null, null)));
    }
    ward.event(Kind.INTERVENTION, "V-1", 1445, Place.WARD, false)
        .event(Kind.INTERVENTION, "V-2", 1446, Place.WARD, false);

    assertFigure(ward.figure("M5", "With a critical intervention within 24 h"), 1, 2, 50);
    assertFigure(ward.figure("interventions", "With an intervention"), 1, 2, 50);
  }

  private static org.driftward.alerts.contract.Call record(
      String encounter, @Nullable Caller caller) {
    return new org.driftward.alerts.contract.Call(
        "E-" + encounter,
        encounter,
        "heron",
        "1",
        1,
        START,
        List.of(),
        null,
        0,
        caller,
        List.of(),
        List.of(),
        Set.of(),
        List.of(),
        null,
        null,
        List.of(),
        null);
  }

  private static void assertFigure(
      Figure figure, double numerator, double denominator, double value) {
    assertThat(figure.numerator()).isEqualTo(numerator);
    assertThat(figure.denominator()).isCloseTo(denominator, within(1e-9));
    assertThat(figure.value()).isCloseTo(value, within(1e-9));
  }
}
