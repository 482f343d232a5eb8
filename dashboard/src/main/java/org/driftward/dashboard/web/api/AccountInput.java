package org.driftward.dashboard.web.api;

import java.util.Set;
import org.driftward.dashboard.contract.Accounts.Account;
import org.jspecify.annotations.Nullable;

/**
 * The body of {@code PUT /api/accounts/{name}}.
 *
 * @param password needed for a new account; without it an existing one keeps its own
 */
record AccountInput(
    @Nullable String displayName,
    @Nullable Set<String> roles,
    @Nullable Set<String> wards,
    @Nullable String password) {

  Account account(String name) {
    return new Account(
        name,
        displayName == null ? "" : displayName,
        roles == null ? Set.of() : roles,
        wards == null ? Set.of() : wards);
  }

  @Override
  public String toString() {
    return "AccountInput[redacted]";
  }
}
