package org.driftward.dashboard.screen.entry;

import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.driftward.dashboard.screen.Countdown;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.ScoreMark;
import org.driftward.dashboard.screen.Wording;
import org.driftward.ingest.contract.Derivations;
import org.driftward.ingest.contract.Derivations.Derived;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Preview.Outlook;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * What would be said of the draft if it were sent now. Nothing of it is kept.
 *
 * @param mark the leading score, or null where none applies
 * @param risk its class of risk, from the recorded inputs and at worst
 * @param move how the score moves against the newest picture: {@code before 2}; or empty
 * @param inputs the leading score's points, input by input, where they are above zero
 * @param missing names of inputs that would settle the score
 * @param changed changed findings, those that the draft brings first
 * @param drift findings beyond the policy's limit of drift
 * @param derived what follows from the draft, with its formula
 * @param questions what the draft suggests and nobody has answered
 * @param next when the next set would be due, or null
 * @param interval why then
 * @param notes on what to bear in mind reading it
 * @param refused why intake would refuse the draft; then all else is empty
 */
public record PreviewScreen(
    @Nullable ScoreMark mark,
    String risk,
    String move,
    List<String> inputs,
    List<String> missing,
    List<Change> changed,
    List<String> drift,
    List<String> derived,
    List<String> questions,
    @Nullable Countdown next,
    String interval,
    List<String> notes,
    List<String> refused) {

  /**
   * @param fresh whether the draft brings it
   */
  public record Change(String words, boolean fresh) {}

  public PreviewScreen {
    inputs = List.copyOf(inputs);
    missing = List.copyOf(missing);
    changed = List.copyOf(changed);
    drift = List.copyOf(drift);
    derived = List.copyOf(derived);
    questions = List.copyOf(questions);
    notes = List.copyOf(notes);
    refused = List.copyOf(refused);
  }

  /**
   * @param whole whether the whole history of the stay was at hand
   */
  public static PreviewScreen of(
      Outlook outlook,
      Derivations.Result derivations,
      boolean whole,
      Findings findings,
      Instant now,
      ZoneId zone) {
    Snapshot draft = outlook.draft();
    Score score = draft.leading();
    return new PreviewScreen(
        score == null ? null : mark(score),
        score == null ? "no score applies" : risk(score),
        score == null ? "" : move(score, outlook.before()),
        score == null ? List.of() : inputs(score, findings),
        score == null ? List.of() : score.missing().stream().map(findings::name).toList(),
        changed(draft, outlook.before()),
        draft.drift().stream()
            .filter(Drift::worse)
            .map(one -> one.words(findings.name(one.code(), one.site(), one.side())))
            .toList(),
        derivations.derived().stream().map(one -> words(one, findings)).toList(),
        derivations.questions().stream()
            .map(question -> findings.name(question.code()) + ": " + question.words())
            .toList(),
        outlook.newest().nextDue() == null
            ? null
            : Countdown.due(outlook.newest().nextDue(), "next set due in", "next set overdue by"),
        outlook.newest().intervalReason() == null ? "" : outlook.newest().intervalReason(),
        notes(outlook, whole, now, zone),
        List.of());
  }

  public static PreviewScreen refused(List<Fault> faults) {
    return new PreviewScreen(
        null,
        "",
        "",
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        "",
        List.of(),
        faults.stream().map(Fault::detail).distinct().toList());
  }

  private static ScoreMark mark(Score score) {
    return ScoreMark.of(score.title(), score.low(), score.high(), score.complete());
  }

  private static String risk(Score score) {
    return score.risk().equals(score.riskIfWorst())
        ? score.risk()
        : score.risk() + ", perhaps " + score.riskIfWorst();
  }

  private static String move(Score score, @Nullable Snapshot before) {
    Score last = before == null ? null : before.leading();
    return last == null || !last.id().equals(score.id()) ? "" : "before " + mark(last).total();
  }

  private static List<String> inputs(Score score, Findings findings) {
    return score.inputs().stream()
        .filter(input -> input.points() != 0)
        .map(
            input ->
                "%s %s: %s"
                    .formatted(
                        findings.name(input.code()),
                        Wording.value(input.value(), input.unit()),
                        Wording.count(input.points(), "point", "points")))
        .toList();
  }

  private static List<Change> changed(Snapshot draft, @Nullable Snapshot before) {
    var known = before == null ? List.<ChangedFinding>of() : before.changed();
    var all =
        draft.changed().stream()
            .map(one -> new Change(one.words(), known.stream().noneMatch(old -> same(one, old))))
            .toList();
    return Stream.concat(
            all.stream().filter(Change::fresh), all.stream().filter(one -> !one.fresh()))
        .toList();
  }

  private static boolean same(ChangedFinding one, ChangedFinding other) {
    return one.code().equals(other.code())
        && Objects.equals(one.site(), other.site())
        && Objects.equals(one.side(), other.side())
        && one.to().equals(other.to());
  }

  private static String words(Derived derived, Findings findings) {
    var finding = derived.finding();
    String unit = finding.value() instanceof Quantity quantity ? quantity.unit() : null;
    return "%s %s: %s"
        .formatted(
            findings.name(finding.code(), finding.key().site(), finding.key().side()),
            Wording.value(rounded(Scalar.of(finding.value())), unit),
            derived.formula());
  }

  /** A mean of two whole numbers is read to one place. */
  private static Scalar rounded(Scalar value) {
    var number = value.number();
    return number == null || number.scale() <= 1
        ? value
        : Scalar.of(number.setScale(1, RoundingMode.HALF_UP));
  }

  private static List<String> notes(Outlook outlook, boolean whole, Instant now, ZoneId zone) {
    var notes = Stream.<String>builder();
    if (outlook.late()) {
      Score newest = outlook.newest().leading();
      notes.add(
          "A later set of %s exists: the newest picture %s."
              .formatted(
                  Wording.time(outlook.newest().asOf(), now, zone),
                  newest == null ? "stays without a score" : "is " + mark(newest).total()));
    }
    if (!whole) {
      notes.add("The record is too long to be read whole: drift and trend may differ.");
    }
    return notes.build().toList();
  }
}
