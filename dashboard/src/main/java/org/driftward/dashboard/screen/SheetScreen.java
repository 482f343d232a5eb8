package org.driftward.dashboard.screen;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Call.Moment;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.WardHandover;
import org.driftward.dashboard.core.Card;
import org.driftward.dashboard.core.Feed;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.core.WardPaper;
import org.jspecify.annotations.Nullable;

/**
 * The list with which one shift hands a ward to the next (practice.md, section 4), the same words
 * on the page, on paper and under the signatures.
 *
 * @param signed earlier hand-overs, newest first
 */
public record SheetScreen(
    String ward,
    String asOf,
    List<Section> sections,
    List<Signed> signed,
    @Nullable Outcome outcome) {

  /** A source that was silent for longer is called out. Engineering choice, no source. */
  private static final Duration SILENT = Duration.ofHours(2);

  /**
   * @param none said where there is no line
   */
  public record Section(String title, List<String> lines, String none) {}

  /**
   * @param received by whom and when, or empty while nobody has signed for it
   * @param mayReceive whether the person can sign as the receiver
   */
  public record Signed(
      String id,
      String given,
      String received,
      String note,
      List<String> sheet,
      boolean mayReceive) {}

  public static SheetScreen of(
      WardPaper paper,
      List<WardHandover> earlier,
      Findings findings,
      Reader reader,
      ZoneId zone,
      @Nullable Outcome outcome) {
    var now = paper.board().asOf();
    return new SheetScreen(
        paper.board().ward(),
        Wording.time(now, now, zone),
        sections(paper, findings, now, zone),
        earlier.stream().map(one -> signed(one, reader, now, zone)).toList(),
        outcome);
  }

  /** What is signed: the sections as plain text. */
  public String text() {
    return "As at "
        + asOf
        + "\n"
        + sections.stream()
            .map(
                section ->
                    section.title()
                        + "\n"
                        + (section.lines().isEmpty()
                            ? "  " + section.none()
                            : section.lines().stream()
                                .map(line -> "  " + line)
                                .collect(Collectors.joining("\n"))))
            .collect(Collectors.joining("\n"));
  }

  private static List<Section> sections(
      WardPaper paper, Findings findings, Instant now, ZoneId zone) {
    var cards = paper.board().cards();
    return List.of(
        new Section("Occupancy", occupancy(paper), ""),
        new Section("Staffing", staffing(paper.onDuty(), now, zone), "No shift is kept."),
        new Section(
            "Concern and trend, most concerning first",
            cards.stream()
                .filter(card -> card.episode() != null || card.movement().slides())
                .map(card -> concern(card, now, zone))
                .toList(),
            "No concern is open and nobody is sliding."),
        new Section(
            "Unanswered",
            cards.stream()
                .filter(Card::unanswered)
                .map(card -> person(card) + ": " + waited(card, now))
                .toList(),
            "Every concern has been answered."),
        new Section(
            "Observations overdue",
            cards.stream()
                .filter(Card::overdue)
                .map(card -> person(card) + ": due " + due(card, now, zone))
                .toList(),
            "No set is overdue."),
        new Section(
            "Calls since " + Wording.time(paper.began(), now, zone),
            paper.calls().stream().map(call -> call(paper, call, now, zone)).toList(),
            "The response team was not called."),
        new Section(
            "Ceilings, altered limits and other care plans",
            paper.patients().stream()
                .filter(view -> !PlanNotes.of(view.carePlan(), findings, now, zone).isEmpty())
                .map(view -> plan(view, findings, now, zone))
                .toList(),
            "Every patient is under the standard settings."),
        new Section("Feeds", feeds(paper, now, zone), "Nothing was recorded in the last 24 h."));
  }

  private static List<String> occupancy(WardPaper paper) {
    var counts = paper.board().counts();
    return List.of(
        "%s; %s open, %d unanswered; %s overdue; %s without a settled score."
            .formatted(
                Wording.count(counts.patients(), "patient", "patients"),
                Wording.count(counts.running(), "concern", "concerns"),
                counts.unanswered(),
                Wording.count(counts.overdue(), "set", "sets"),
                Wording.count(counts.incomplete(), "patient", "patients")));
  }

  private static List<String> staffing(List<Shift> onDuty, Instant now, ZoneId zone) {
    return onDuty.stream()
        .map(
            shift ->
                "%s: %s%s, until %s"
                    .formatted(
                        StaffScreen.words(shift.duty()),
                        shift.name(),
                        shift.beds().isEmpty()
                            ? ""
                            : ", bed " + String.join(", ", shift.bedsInOrder()),
                        Wording.time(shift.until(), now, zone)))
        .toList();
  }

  /** Two identifiers on every view. */
  private static String person(Card card) {
    return "Bed %s, %s, patient %s"
        .formatted(
            card.bed() == null ? "–" : card.bed(),
            card.name() == null ? "name unknown" : card.name(),
            card.patientId());
  }

  private static String concern(Card card, Instant now, ZoneId zone) {
    var score = card.score() == null ? null : ScoreMark.of(card.score());
    var parts = new ArrayList<String>();
    parts.add(
        score == null
            ? "no score"
            : score.title()
                + " "
                + score.total()
                + (score.note().isEmpty() ? "" : " (" + score.note() + ")"));
    parts.add(Moving.of(card.movement()).words());
    var episode = card.episode();
    if (episode != null) {
      var hand = Hand.of(episode);
      parts.add(
          "%s priority since %s: %s"
              .formatted(
                  episode.level().word(),
                  Wording.time(episode.openedAt(), now, zone),
                  Reasons.brief(card.reasons())));
      parts.add(
          hand.owner() == null ? "nobody has it" : hand.owner() + ", " + episode.state().word());
    }
    return person(card) + ": " + String.join("; ", parts);
  }

  private static String waited(Card card, Instant now) {
    var waiting = card.episode() == null ? null : Hand.of(card.episode()).waiting();
    return waiting == null ? "not answered" : waiting.words(now);
  }

  private static String due(Card card, Instant now, ZoneId zone) {
    var due = card.nextDue();
    return due == null
        ? "now"
        : Wording.time(due, now, zone) + ", " + Wording.span(Duration.between(due, now)) + " ago";
  }

  private static String call(WardPaper paper, Call call, Instant now, ZoneId zone) {
    var who =
        paper.board().cards().stream()
            .filter(card -> card.encounter().equals(call.encounter()))
            .findFirst()
            .map(SheetScreen::person)
            .orElse("Stay " + call.encounter());
    var ending = call.ending();
    var times =
        List.of(Step.RECEIVED, Step.AT_BEDSIDE, Step.FINISHED).stream()
            .flatMap(step -> call.moment(step).stream())
            .map(moment -> words(moment, now, zone))
            .collect(Collectors.joining(", "));
    return "%s: %s; %s"
        .formatted(
            who,
            times.isEmpty() ? "no time recorded" : times,
            ending == null ? "not finished" : CallScreen.words(ending.disposition()));
  }

  private static String words(Moment moment, Instant now, ZoneId zone) {
    return moment.step().word().replace('-', ' ') + " " + Wording.time(moment.at(), now, zone);
  }

  private static String plan(PatientView view, Findings findings, Instant now, ZoneId zone) {
    var notes = PlanNotes.of(view.carePlan(), findings, now, zone);
    var reviews = PlanNotes.reviews(view.carePlan(), now, zone);
    return person(view.card())
        + ": "
        + Stream.concat(reviews.stream(), notes.stream()).collect(Collectors.joining("; "));
  }

  private static List<String> feeds(WardPaper paper, Instant now, ZoneId zone) {
    return paper.feeds().stream()
        .map(
            feed -> {
              var silent = Duration.between(feed.last(), now);
              return "%s: newest record %s%s"
                  .formatted(
                      source(feed),
                      Wording.time(feed.last(), now, zone),
                      silent.compareTo(SILENT) > 0 ? ", SILENT for " + Wording.span(silent) : "");
            })
        .toList();
  }

  /** A standard is written as its readers write it. */
  private static String source(Feed feed) {
    return switch (feed.source()) {
      case "hl7" -> "HL7";
      case "fhir" -> "FHIR";
      default -> Wording.sentence(feed.source());
    };
  }

  private static Signed signed(WardHandover one, Reader reader, Instant now, ZoneId zone) {
    return new Signed(
        one.id(),
        one.giverName() + ", " + Wording.time(one.givenAt(), now, zone),
        one.receivedAt() == null
            ? ""
            : one.receiverName() + ", " + Wording.time(one.receivedAt(), now, zone),
        one.note() == null ? "" : one.note(),
        one.sheet().lines().toList(),
        one.receiver() == null && reader.cares() && !one.giver().equals(reader.account()));
  }
}
