package org.driftward.dashboard.security;

import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import java.util.Set;
import org.driftward.dashboard.contract.Accounts.Account;
import org.driftward.ingest.contract.WardScope;

/** Turns an account into what the framework calls a security identity. */
final class Identities {

  /** Name of the identity's attribute that holds the person's name. */
  static final String NAME = "driftward.name";

  private static final String EVERY_WARD = "*";

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

  static WardScope scope(Account account) {
    var wards = account.wards();
    return wards.contains(EVERY_WARD) ? WardScope.EVERY_WARD : WardScope.of(Set.copyOf(wards));
  }

  private static QuarkusSecurityIdentity.Builder add(
      QuarkusSecurityIdentity.Builder builder, Account account) {
    return builder
        .addRoles(account.roles())
        .addAttribute(WardScope.ATTRIBUTE, scope(account))
        .addAttribute(NAME, account.displayName());
  }
}
