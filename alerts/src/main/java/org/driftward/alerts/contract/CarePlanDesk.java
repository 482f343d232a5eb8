package org.driftward.alerts.contract;

import java.util.Optional;
import org.driftward.scoring.contract.CarePlan;

/** Where care plans are signed. Durable when it returns. Thread-safe, blocking. */
public interface CarePlanDesk {

  /**
   * Keeps a new version of the encounter's care plan, signed by the actor.
   *
   * @return the plan as kept
   * @throws RefusedException naming the field that local policy does not allow
   */
  CarePlan sign(PlanRequest request, Actor actor);

  /**
   * Ends the plan in force now: the standard settings are back, and a hold is lifted. Standing
   * facts stand.
   *
   * @return the plan as it ended
   * @throws RefusedException if none is in force or the role is not enough
   */
  CarePlan end(String encounter, String reason, Actor actor);

  /** The newest plan, whether or not it is in force now. */
  Optional<CarePlan> find(String encounter);

  /** A care plan that cannot be signed as it is. The message may name what was asked for. */
  final class RefusedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String field;

    public RefusedException(String field, String why) {
      super(why);
      this.field = field;
    }

    /** Name of the plan's field; {@code signedBy} where the actor's role is not enough. */
    public String field() {
      return field;
    }
  }
}
