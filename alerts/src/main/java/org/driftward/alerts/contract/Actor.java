package org.driftward.alerts.contract;

import java.util.Objects;
import java.util.Set;

/**
 * Who acts.
 *
 * @param account sign-in name
 * @param name as people know them
 * @param roles of the account, see {@code AccountRole}
 */
public record Actor(String account, String name, Set<String> roles) {
  public Actor {
    Objects.requireNonNull(account, "account");
    Objects.requireNonNull(name, "name");
    roles = Set.copyOf(roles);
  }
}
