package org.driftward.alerts.core.episode;

import java.util.Objects;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Shift;

/** The person responsible. */
public record Owner(String account, String name) {
  public Owner {
    Objects.requireNonNull(account, "account");
    Objects.requireNonNull(name, "name");
  }

  public static Owner of(Actor actor) {
    return new Owner(actor.account(), actor.name());
  }

  static Owner of(Shift shift) {
    return new Owner(shift.account(), shift.name());
  }
}
