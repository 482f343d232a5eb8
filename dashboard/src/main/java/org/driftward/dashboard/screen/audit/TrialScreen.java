package org.driftward.dashboard.screen.audit;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.driftward.alerts.contract.PolicyTrial;
import org.driftward.alerts.contract.PolicyTrial.Outcome;
import org.driftward.alerts.contract.PolicyTrial.Raised;
import org.driftward.dashboard.screen.Wording;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * An edited policy beside the one in force.
 *
 * @param policy the edited text, to go on with
 * @param refused why it was not tried, or null
 * @param lines how both did; empty before the first trial
 * @param missed what only the policy in force raises
 * @param added what only the edited one raises
 */
public record TrialScreen(
    @Nullable String ward,
    List<String> wards,
    String month,
    String policy,
    @Nullable String refused,
    List<Line> lines,
    List<Case> missed,
    List<Case> added,
    int kept) {

  /** One count under both policies. */
  public record Line(String name, String inForce, String edited) {}

  /** An episode that only one of them raises. */
  public record Case(
      String path, String encounter, String ward, String opened, String level, String why) {}

  public static TrialScreen before(
      @Nullable String ward, List<String> wards, String month, String policy) {
    return refused(ward, wards, month, policy, null);
  }

  public static TrialScreen refused(
      @Nullable String ward,
      List<String> wards,
      String month,
      String policy,
      @Nullable String why) {
    return new TrialScreen(ward, wards, month, policy, why, List.of(), List.of(), List.of(), 0);
  }

  public static TrialScreen of(
      @Nullable String ward,
      List<String> wards,
      String month,
      String policy,
      PolicyTrial trial,
      Instant now,
      ZoneId zone) {
    return new TrialScreen(
        ward,
        wards,
        month,
        policy,
        null,
        lines(trial),
        trial.missed().stream().map(one -> of(one, now, zone)).toList(),
        trial.added().stream().map(one -> of(one, now, zone)).toList(),
        trial.kept().size());
  }

  private static List<Line> lines(PolicyTrial trial) {
    Outcome one = trial.inForce();
    Outcome other = trial.edited();
    return List.of(
        new Line("Policy", one.version(), other.version()),
        line("Episodes", one.episodes(), other.episodes()),
        line("of them high", one.high(), other.high()),
        line("of them medium", one.medium(), other.medium()),
        line("of them low", one.low(), other.low()),
        line("Alarms", one.alarms(), other.alarms()),
        line("Alarms per 100 bed-days", one.alarmsPer100BedDays(), other.alarmsPer100BedDays()),
        line("Steps up the ladder", one.escalations(), other.escalations()),
        new Line(
            "Recorded arrests, moves to intensive care and deaths with an alarm before",
            trial.eventsInForce() + "/" + trial.events(),
            trial.eventsEdited() + "/" + trial.events()));
  }

  private static Line line(String name, double inForce, double edited) {
    return new Line(name, Wording.number(inForce, 1), Wording.number(edited, 1));
  }

  private static Case of(Raised raised, Instant now, ZoneId zone) {
    Level level = raised.level();
    return new Case(
        "/encounters/" + raised.encounter(),
        raised.encounter(),
        raised.ward(),
        Wording.time(raised.openedAt(), now, zone),
        level.word(),
        raised.why());
  }
}
