package org.driftward.dashboard.security;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.SecurityIdentityAugmentor;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.ingest.contract.WardScope;

/**
 * Gives wards, roles and a name to somebody whom the hospital's identity provider has signed in: it
 * says who, the account of that name says what they may see. Without such an account they see
 * nothing.
 */
@ApplicationScoped
public class AccountAugmentor implements SecurityIdentityAugmentor {

  private final Accounts accounts;

  public AccountAugmentor(Accounts accounts) {
    this.accounts = accounts;
  }

  @Override
  public Uni<SecurityIdentity> augment(
      SecurityIdentity identity, AuthenticationRequestContext context) {
    if (identity.isAnonymous() || identity.getAttribute(WardScope.ATTRIBUTE) != null) {
      return Uni.createFrom().item(identity);
    }
    return context.runBlocking(
        () ->
            accounts
                .find(identity.getPrincipal().getName())
                .map(account -> Identities.extend(identity, account))
                .orElse(identity));
  }
}
