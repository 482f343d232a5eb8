package org.driftward.alerts.core.audit;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditReport.Measure;

/** M9, exploratory: hours of the team, and days in intensive care after late calls. */
final class CostMeasure {

  private static final double MILLIS_OF_AN_HOUR = Duration.ofHours(1).toMillis();

  private CostMeasure() {}

  static Measure of(View view) {
    var how =
        "Hours from arrival to the end of a call / calls with both times; days in intensive care after"
            + " calls later than 60 min / such moves.";
    var timed =
        view.calls().stream()
            .filter(call -> call.record() != null)
            .filter(
                call ->
                    CallMeasures.record(call).arrived() != null
                        && CallMeasures.record(call).ended() != null)
            .toList();
    var late = lateMoves(view);
    if (timed.isEmpty() && late.isEmpty()) {
      return Figures.lacking(
          "M9",
          "Cost, exploratory",
          how,
          CallMeasures.SUBBE,
          "arrival and end in the team's record, or days of moves to intensive care as events");
    }
    double hours =
        timed.stream()
            .map(CallMeasures::record)
            .mapToDouble(
                r ->
                    Duration.between(
                                Objects.requireNonNull(r.arrived()),
                                Objects.requireNonNull(r.ended()))
                            .toMillis()
                        / MILLIS_OF_AN_HOUR)
            .sum();
    double days =
        late.stream().mapToDouble(e -> Objects.requireNonNull(e.value()).doubleValue()).sum();
    return new Measure(
        "M9",
        "Cost, exploratory",
        how,
        CallMeasures.SUBBE,
        List.of(
            Figures.figure(
                "Team hours per call",
                "h",
                1,
                hours,
                timed.size(),
                timed.stream().map(Call::trace).toList(),
                List.of()),
            Figures.figure(
                "Days in intensive care after a late call",
                "d",
                1,
                days,
                late.size(),
                late.stream().map(View::trace).toList(),
                List.of())),
        null);
  }

  private static List<AuditEvent> lateMoves(View view) {
    return view.events(AuditEvent.Kind.INTENSIVE_CARE_MOVE).stream()
        .filter(event -> event.value() != null)
        .filter(
            event ->
                view.evidence().calls().stream()
                    .anyMatch(
                        call ->
                            call.encounter().equals(event.encounter())
                                && !call.at().isAfter(event.at())
                                && CallMeasures.delay(call).compareTo(CallMeasures.LATE) > 0))
        .toList();
  }
}
