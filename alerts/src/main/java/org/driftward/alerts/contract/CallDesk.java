package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Call.Caller;
import org.driftward.alerts.contract.Call.Ending;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.Call.TreatmentKind;
import org.jspecify.annotations.Nullable;

/**
 * Where the record of a response team's call is kept. Its first entry begins it. Saying that the
 * call was received acknowledges the episode, being at the bedside attends it, and handing the call
 * over hands the episode over, where that still applies. Durable when it returns. Thread-safe,
 * blocking.
 */
public interface CallDesk {

  /** One thing to record. A time that is null is now. */
  sealed interface Entry {
    /** A step other than the end. A second entry of the same step corrects the first. */
    record Reached(Step step, @Nullable Instant at) implements Entry {}

    /** Replaces what was recorded before. */
    record CalledBy(Caller caller) implements Entry {}

    /** Everybody at the bedside, by role; replaces what was recorded before. */
    record Present(Set<String> roles) implements Entry {
      public Present {
        roles = Set.copyOf(roles);
      }
    }

    record Treated(TreatmentKind kind, @Nullable String note, @Nullable Instant at)
        implements Entry {}

    /**
     * @param to account of the next leader
     * @param toName as people know them, or null for the name on the shift
     */
    record HandedOver(String to, @Nullable String toName, String note) implements Entry {}

    record Finished(Ending ending, @Nullable Instant at) implements Entry {}
  }

  /** What became of it. */
  sealed interface Answer {
    record Done(Call call) implements Answer {}

    record Incomplete(String field, String why) implements Answer {}

    record NotAllowed(String why) implements Answer {}

    record NoLongerApplies(Call call, String why) implements Answer {}

    record Unknown() implements Answer {}
  }

  Answer record(String episode, Entry entry, Actor actor);

  Optional<Call> find(String episode);

  /**
   * Calls that began in the stretch, newest first, without their vital signs.
   *
   * @param wards only these, or null for all
   * @param from inclusive
   * @param to exclusive
   */
  List<Call> list(@Nullable Set<String> wards, Instant from, Instant to);
}
