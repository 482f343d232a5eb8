package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Where people come on and go off duty. An episode never rests with somebody who has gone off duty:
 * when a duty ends, the episodes of its holder pass to whoever took over, else to whoever looks
 * after the bed, else to the charge nurse, else the clock runs again. Durable when it returns.
 * Thread-safe, blocking.
 */
public interface ShiftDesk {

  /**
   * @param account whose duty begins
   * @param name as people know them
   * @param until planned end, or null for the policy's usual length
   * @param takesOver the running shift that ends with it, or null. A charge duty always takes over
   *     the ward's charge duty; one person's duty of the same kind on the same ward replaces the
   *     one before.
   * @param contact how the person is told of alarms beyond the board, or null for the policy's way
   */
  record Begin(
      String ward,
      Duty duty,
      String account,
      String name,
      Set<String> beds,
      @Nullable Instant until,
      @Nullable String takesOver,
      @Nullable Contact contact) {
    public Begin {
      beds = beds == null ? Set.of() : Set.copyOf(beds);
    }

    /** Somebody who is told in the policy's way. */
    public Begin(
        String ward,
        Duty duty,
        String account,
        String name,
        Set<String> beds,
        @Nullable Instant until,
        @Nullable String takesOver) {
      this(ward, duty, account, name, beds, until, takesOver, null);
    }
  }

  /** What became of it. */
  sealed interface Answer {
    record Done(Shift shift) implements Answer {}

    /** A field is missing or makes no sense. */
    record Incomplete(String field, String why) implements Answer {}

    /** The person's roles do not allow it. */
    record NotAllowed(String why) implements Answer {}

    /** It has ended already. */
    record NoLongerApplies(Shift shift, String why) implements Answer {}

    record Unknown() implements Answer {}
  }

  Answer begin(Begin begin, Actor actor);

  Answer end(String shift, Actor actor);

  Optional<Shift> find(String shift);

  /** Who is on duty on the ward now, those for every ward included: by duty, then newest first. */
  List<Shift> running(String ward);

  /** Every shift on the ward that touches the stretch, newest first. */
  List<Shift> between(String ward, Instant from, Instant to);
}
