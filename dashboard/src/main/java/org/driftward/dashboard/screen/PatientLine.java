package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import org.driftward.dashboard.core.Card;
import org.driftward.dashboard.core.Concern;
import org.jspecify.annotations.Nullable;

/**
 * One patient on a board or in the queue.
 *
 * @param bed number or name; {@code –} while none is assigned
 * @param about age and sex
 * @param sign of the running episode, or null without one
 * @param concern why the line stands where it does
 * @param score or null while no score applies
 * @param sliding whether the patient gets worse by more than scatter
 * @param reasons what holds the episode open or has changed, gravest first
 * @param plan ceiling of care, oxygen scale 2, hold: what changes the response
 * @param reached whom the present alarm has reached, or null without an episode
 * @param hand or null without an episode
 * @param nextSet when the next set is due, or null before the first
 * @param acts one-touch actions, the next natural one first
 * @param told how the newest alarm reached whom beyond the board
 */
public record PatientLine(
    String encounter,
    String ward,
    String bed,
    PersonName name,
    String about,
    @Nullable Sign sign,
    Concern concern,
    @Nullable ScoreMark score,
    Moving moving,
    boolean sliding,
    Trail trail,
    List<String> reasons,
    List<String> plan,
    @Nullable Hand hand,
    @Nullable Reached reached,
    @Nullable Countdown nextSet,
    List<Act> acts,
    List<ToldLine> told) {

  public PatientLine {
    reasons = List.copyOf(reasons);
    plan = List.copyOf(plan);
    acts = List.copyOf(acts);
    told = List.copyOf(told);
  }

  public static PatientLine of(Card card, Reader reader, Instant now, ZoneId zone) {
    var episode = card.episode();
    return new PatientLine(
        card.encounter(),
        card.ward(),
        Objects.requireNonNullElse(card.bed(), "–"),
        PersonName.of(card.name()),
        Identity.about(card.birthDate(), card.sex(), now.atZone(zone).toLocalDate()),
        card.level() == null ? null : Sign.of(card.level()),
        card.concern(),
        card.score() == null ? null : ScoreMark.of(card.score()),
        Moving.of(card.movement()),
        card.movement().slides(),
        Trail.of(card.recentTotals()),
        card.reasons().stream().map(Headline::of).toList(),
        PlanNotes.brief(card),
        episode == null ? null : Hand.of(episode),
        episode == null ? null : Reached.of(episode, card.present(), now, zone),
        card.nextDue() == null
            ? null
            : Countdown.due(card.nextDue(), "set due in", "set overdue by"),
        episode == null ? List.of() : Acts.oneTouch(episode, reader),
        card.present().stream().map(one -> ToldLine.of(one, now, zone)).toList());
  }

  /** Whether nothing asks for attention: the patient shares a line with others. */
  public boolean quiet() {
    return concern == Concern.WATCHED;
  }

  public boolean unanswered() {
    return hand != null && hand.waiting() != null;
  }

  /** Nobody has answered, or whoever did has let the clock run out. */
  public boolean needsSomebody(Instant now) {
    return hand != null
        && (hand.waiting() != null || (hand.clock() != null && hand.clock().late(now)));
  }

  public boolean overdue(Instant now) {
    return nextSet != null && nextSet.late(now);
  }

  /** Without an episode: what asks for attention, in one word. */
  public String mark() {
    return switch (concern) {
      case OVERDUE_HIGH -> "Overdue";
      case SLIDING -> "Sliding";
      case UNSEEN -> score == null ? "No set" : "Overdue";
      default -> "";
    };
  }

  /** Says nothing about the person. */
  @Override
  public String toString() {
    return "PatientLine[" + encounter + "]";
  }
}
