package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Call.Caller;
import org.driftward.alerts.contract.Call.CallerRole;
import org.driftward.alerts.contract.Call.Disposition;
import org.driftward.alerts.contract.Call.Moment;
import org.driftward.alerts.contract.Call.Signs;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.Call.TreatmentKind;
import org.driftward.alerts.contract.Episode;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * The record of a response team's call.
 *
 * @param context who, where: a label and what the record says
 * @param why the triggers as they stood when the call began, gravest first
 * @param steps the times that count, recorded or not
 * @param signs columns and rows of the vital signs at trigger, arrival and end
 * @param ending in words, or empty while it goes on
 * @param open whether it goes on
 * @param writes whether the person may record
 */
public record CallScreen(
    String episode,
    Identity who,
    Sign sign,
    List<Line> context,
    List<String> why,
    List<StepLine> steps,
    Table signs,
    List<String> present,
    List<String> treatments,
    List<String> transfers,
    String lead,
    List<Line> ending,
    boolean open,
    boolean writes,
    List<StaffScreen.Choice> callerRoles,
    List<StaffScreen.Choice> treatmentKinds,
    List<StaffScreen.Choice> dispositions,
    List<StaffScreen.Choice> laterSteps,
    @Nullable Outcome outcome) {

  public record Line(String label, String words) {}

  /**
   * @param time or empty while not recorded
   * @param note when and by whom, where it was entered late
   */
  public record StepLine(String word, String words, String time, String note) {}

  public record Table(List<String> columns, List<Row> rows) {}

  public record Row(String name, List<String> cells) {}

  public static CallScreen of(
      Call call,
      Episode episode,
      Identity who,
      Findings findings,
      Reader reader,
      Instant now,
      ZoneId zone,
      @Nullable Outcome outcome) {
    return new CallScreen(
        episode.id(),
        who,
        Sign.of(episode.level()),
        context(call, now, zone),
        call.triggers(),
        Arrays.stream(Step.values()).map(step -> line(call, step, now, zone)).toList(),
        table(call.signs(), findings, now, zone),
        call.present().stream().sorted().toList(),
        call.treatments().stream()
            .map(
                given ->
                    Wording.time(given.at(), now, zone)
                        + " "
                        + words(given.kind())
                        + (given.note() == null ? "" : ": " + given.note())
                        + late(given.at(), given.enteredAt(), given.by(), now, zone))
            .toList(),
        call.transfers().stream()
            .map(
                one ->
                    "%s %s to %s: %s"
                        .formatted(
                            Wording.time(one.at(), now, zone),
                            one.from(),
                            one.toName(),
                            one.note()))
            .toList(),
        call.leadName() == null ? "" : call.leadName(),
        ending(call, now, zone),
        !call.finished(),
        reader.cares(),
        Arrays.stream(CallerRole.values())
            .map(role -> new StaffScreen.Choice(role.word(), words(role)))
            .toList(),
        Arrays.stream(TreatmentKind.values())
            .map(kind -> new StaffScreen.Choice(kind.word(), words(kind)))
            .toList(),
        Arrays.stream(Disposition.values())
            .map(where -> new StaffScreen.Choice(where.word(), words(where)))
            .toList(),
        Arrays.stream(Step.values())
            .filter(step -> step != Step.FINISHED)
            .map(step -> new StaffScreen.Choice(step.word(), words(step)))
            .toList(),
        outcome);
  }

  private static List<Line> context(Call call, Instant now, ZoneId zone) {
    var lines = new ArrayList<Line>();
    lines.add(new Line("First trigger", Wording.time(call.firstTrigger(), now, zone)));
    lines.add(new Line("Called by", calledBy(call.caller())));
    lines.add(
        new Line("Ceiling of care", Objects.requireNonNullElse(call.ceiling(), "none in force")));
    lines.add(new Line("Calls in the 24 h before", String.valueOf(call.callsBefore())));
    return lines;
  }

  private static String calledBy(@Nullable Caller caller) {
    return caller == null
        ? "not recorded"
        : words(caller.role()) + (caller.name() == null ? "" : ", " + caller.name());
  }

  private static StepLine line(Call call, Step step, Instant now, ZoneId zone) {
    return call.moment(step)
        .map(
            moment ->
                new StepLine(
                    step.word(),
                    words(step),
                    Wording.time(moment.at(), now, zone),
                    by(moment, now, zone)))
        .orElseGet(() -> new StepLine(step.word(), words(step), "", ""));
  }

  private static String by(Moment moment, Instant now, ZoneId zone) {
    return moment.by() + late(moment.at(), moment.enteredAt(), "", now, zone);
  }

  /** A late entry keeps both times. */
  private static String late(Instant at, Instant entered, String by, Instant now, ZoneId zone) {
    return entered.minusSeconds(60).isAfter(at)
        ? " (entered " + Wording.time(entered, now, zone) + (by.isEmpty() ? ")" : " by " + by + ")")
        : "";
  }

  private static Table table(List<Signs> signs, Findings findings, Instant now, ZoneId zone) {
    var codes = new LinkedHashSet<String>();
    signs.forEach(one -> one.values().forEach(value -> codes.add(value.code())));
    var rows = new ArrayList<Row>();
    rows.add(new Row("Score", signs.stream().map(Signs::score).toList()));
    for (var code : codes) {
      rows.add(new Row(findings.name(code), signs.stream().map(one -> cell(one, code)).toList()));
    }
    var columns =
        signs.stream()
            .map(
                one ->
                    Wording.sentence(one.point().word())
                        + ", set of "
                        + Wording.time(one.asOf(), now, zone))
            .toList();
    return new Table(columns, signs.isEmpty() ? List.of() : rows);
  }

  private static String cell(Signs at, String code) {
    return at.values().stream()
        .filter(value -> value.code().equals(code))
        .findFirst()
        .map(
            value ->
                Wording.value(new Scalar(value.number(), value.word()), value.unit())
                    + (value.points() == 0 ? "" : " (" + value.points() + ")"))
        .orElse("–");
  }

  private static List<Line> ending(Call call, Instant now, ZoneId zone) {
    var ending = call.ending();
    if (ending == null) {
      return List.of();
    }
    var lines = new ArrayList<Line>();
    lines.add(new Line("Disposition", words(ending.disposition())));
    if (ending.plan() != null) {
      lines.add(new Line("Plan", ending.plan()));
    }
    if (ending.recipient() != null) {
      lines.add(new Line("Handed to", ending.recipient()));
    }
    if (ending.nextSet() != null) {
      lines.add(new Line("Next set", Wording.time(ending.nextSet(), now, zone)));
    }
    return lines;
  }

  private static String words(Step step) {
    return switch (step) {
      case CALLED -> "Team called";
      case RECEIVED -> "Received";
      case AT_BEDSIDE -> "At the bedside";
      case CRITICAL_INTERVENTION -> "Critical intervention";
      case INTENSIVE_CARE_DECISION -> "Decision on intensive care";
      case LEFT_WARD -> "Patient left the ward";
      case FINISHED -> "Finished";
    };
  }

  private static String words(CallerRole role) {
    return switch (role) {
      case NURSE -> "Nurse";
      case DOCTOR -> "Doctor";
      case OTHER_STAFF -> "Other staff";
      case PATIENT -> "The patient";
      case FAMILY -> "Family or visitor";
    };
  }

  private static String words(TreatmentKind kind) {
    return switch (kind) {
      case VASOPRESSOR -> "Vasopressor";
      case OXYGEN -> "Oxygen";
      default -> Wording.sentence(kind.word());
    };
  }

  static String words(Disposition where) {
    return switch (where) {
      case STAYED_WITH_PLAN -> "Stays, with a plan";
      case HIGHER_CARE -> "Moved to higher care";
      case THEATRE -> "Moved to theatre";
      case DIED -> "Died";
      case LIMITATION_AGREED -> "Limitation of care agreed";
    };
  }
}
