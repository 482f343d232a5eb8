package org.driftward.dashboard.screen.entry;

import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
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
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * What would be said of the draft if it were sent now. Nothing of it is kept.
 *
 * @param mark the leading score, or null where none applies
 * @param risk its class of risk, from the recorded inputs and at worst
 * @param move how the score moves against the newest picture: {@code before 2}; or empty
 * @param inputs the leading score's points, input by input, where they are above zero
 * @param carried values of earlier looks that the score counts, oldest first, each with its age
 * @param oldest how old the oldest of them is, in words; empty where every value is of this look
 * @param asks what local policy's class of risk asks for, in words; empty where it says nothing
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
    List<String> carried,
    String oldest,
    String asks,
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
    carried = List.copyOf(carried);
    missing = List.copyOf(missing);
    changed = List.copyOf(changed);
    drift = List.copyOf(drift);
    derived = List.copyOf(derived);
    questions = List.copyOf(questions);
    notes = List.copyOf(notes);
    refused = List.copyOf(refused);
  }

  /**
   * @param asks what the class of risk of a score asks for, in words
   * @param whole whether the whole history of the stay was at hand
   */
  public static PreviewScreen of(
      Outlook outlook,
      Derivations.Result derivations,
      boolean whole,
      Function<Score, String> asks,
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
        carried(score, draft.asOf(), findings),
        oldest(score, draft.asOf()),
        score == null ? "" : asks.apply(score),
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
        "",
        "",
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

  /** Closer together than this is one look at the patient. The policy's spacing, as shipped. */
  private static final Duration ONE_LOOK = Duration.ofMinutes(15);

  private static Stream<ScoredInput> earlier(@Nullable Score score, Instant asOf) {
    return score == null
        ? Stream.empty()
        : score.inputs().stream()
            .filter(input -> input.takenAt().isBefore(asOf.minus(ONE_LOOK)))
            .sorted(Comparator.comparing(ScoredInput::takenAt));
  }

  private static List<String> carried(@Nullable Score score, Instant asOf, Findings findings) {
    return earlier(score, asOf)
        .map(
            input ->
                "%s %s, %s old"
                    .formatted(
                        findings.name(input.code()),
                        Wording.value(input.value(), input.unit()),
                        Wording.span(Duration.between(input.takenAt(), asOf))))
        .toList();
  }

  private static String oldest(@Nullable Score score, Instant asOf) {
    return earlier(score, asOf)
        .findFirst()
        .map(input -> Wording.span(Duration.between(input.takenAt(), asOf)))
        .orElse("");
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
