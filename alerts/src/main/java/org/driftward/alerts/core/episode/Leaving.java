package org.driftward.alerts.core.episode;

import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Move.To;
import org.driftward.alerts.core.shift.Roster;
import org.jspecify.annotations.Nullable;

/** An owner, or the patient, goes elsewhere: who answers now, and who must be called for that. */
record Leaving(Turns turns) {

  /**
   * Passes to whoever took over, who stays on the same clock; else to whoever answers for the bed,
   * who has not asked for it and is called; else the clock runs again and is nobody's.
   */
  Decision ownerGone(Course course, Case running, Roster roster, String why, Turn turn) {
    var standing = running.standing();
    var owner = standing.owner();
    if (owner == null) {
      return Decision.silent(course);
    }
    var ward = course.place().ward();
    var stage = Stage.of(standing);
    var move =
        roster
            .successor(owner.account(), ward)
            .map(Owner::of)
            .map(heir -> stage.passOn(standing, heir))
            .or(
                () ->
                    roster
                        .answering(owner.account(), ward, course.place().bed())
                        .map(Owner::of)
                        .map(heir -> stage.callUpon(standing, heir, turn)))
            .orElseGet(() -> stage.abandoned(standing, turn));
    return taken(course, running, move, why, turn);
  }

  /**
   * The people of another ward are called at once, whoever had it before.
   *
   * @param course with the place where the patient is now
   */
  Decision transferred(Course course, Case running, @Nullable String why, Turn turn) {
    var move = Stage.of(running.standing()).transferred(running.standing(), turn);
    return taken(course, running, move, why, turn);
  }

  private Decision taken(Course course, Case running, Move move, @Nullable String why, Turn turn) {
    if (!(move instanceof To to)) {
      throw new IllegalStateException("a running episode that cannot be left");
    }
    var moved = running.movedTo(to.standing());
    boolean calls = moved.state() == EpisodeState.OPEN && running.state() != EpisodeState.OPEN;
    var next = calls ? moved.alarmedAt(turn.now()) : moved;
    return turns.changed(course, running, next, to.kind(), Happening.SERVICE, null, why);
  }
}
