package org.driftward.dashboard.security;

import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.ingest.contract.WardScope;

/** Turns an account into what the framework calls a security identity. */
final class Identities {

  /** Name of the identity's attribute that holds the person's name. */
  static final String NAME = "driftward.name";

  private Identities() {}

  static SecurityIdentity of(Account account) {
    return add(QuarkusSecurityIdentity.builder(), account)
        .setPrincipal(new QuarkusPrincipal(account.name()))
        .build();
  }

  /** Adds the account's roles, wards and name to somebody whom another party has identified. */
  static SecurityIdentity extend(SecurityIdentity identity, Account account) {
    return add(QuarkusSecurityIdentity.builder(identity), account).build();
  }

  private static QuarkusSecurityIdentity.Builder add(
      QuarkusSecurityIdentity.Builder builder, Account account) {
    return builder
        .addRoles(account.roles())
        .addAttribute(WardScope.ATTRIBUTE, account.scope())
        .addAttribute(NAME, account.displayName());
  }
}
