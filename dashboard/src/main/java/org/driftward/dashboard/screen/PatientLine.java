package org.driftward.dashboard.screen;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One patient on a board or in the queue.
 *
 * @param ward where the patient lies
 * @param bed number or name; {@code –} while none is assigned
 * @param about age and sex
 * @param sign of the running episode, or null without one
 * @param score or null while no score applies
 * @param reasons what holds the episode open or asks for attention, gravest first
 * @param hand or null without an episode
 * @param nextSet when the next set is due, or null where that is unknown
 * @param acts one-touch actions, the next natural one first
 */
public record PatientLine(
    String encounter,
    String ward,
    String bed,
    PersonName name,
    String about,
    @Nullable Sign sign,
    @Nullable ScoreMark score,
    Movement moving,
    List<String> reasons,
    @Nullable Hand hand,
    @Nullable Countdown nextSet,
    List<Act> acts) {

  public PatientLine {
    reasons = List.copyOf(reasons);
    acts = List.copyOf(acts);
  }

  public boolean concerning() {
    return sign != null;
  }

  public boolean unanswered() {
    return hand != null && hand.waiting() != null;
  }

  public boolean sliding() {
    return moving == Movement.RISING;
  }

  /** Says nothing about the person. */
  @Override
  public String toString() {
    return "PatientLine[" + encounter + "]";
  }
}
