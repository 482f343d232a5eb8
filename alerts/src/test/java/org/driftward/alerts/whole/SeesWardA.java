package org.driftward.alerts.whole;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.SecurityIdentityAugmentor;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import org.driftward.ingest.contract.WardScope;

/** Gives the signed-in account of a test a name and the ward that it sees. */
@ApplicationScoped
public class SeesWardA implements SecurityIdentityAugmentor {
  @Override
  public Uni<SecurityIdentity> augment(
      SecurityIdentity identity, AuthenticationRequestContext context) {
    return Uni.createFrom()
        .item(
            QuarkusSecurityIdentity.builder(identity)
                .addAttribute(WardScope.ATTRIBUTE, WardScope.of(Set.of("ward-a")))
                .addAttribute("driftward.name", "Charge Two")
                .build());
  }
}
