package org.driftward.alerts.contract;

import java.util.Optional;
import org.driftward.scoring.contract.CarePlan;

/** Where care plans are signed. Durable when it returns. Thread-safe, blocking. */
public interface CarePlanDesk {

  /**
   * Keeps a new version of the encounter's care plan; {@code plan.version()} and {@code
   * plan.signedBy()} are replaced by the next version and the actor's account.
   *
   * @return the plan as kept
   */
  CarePlan sign(CarePlan plan, Actor actor);

  /** The newest plan, whether or not it is in force now. */
  Optional<CarePlan> find(String encounter);
}
