package org.driftward.alerts.web;

import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.RequestScoped;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;

/** The signed-in account, and the wards it sees. */
@RequestScoped
public class SignedIn {

  private static final String NAME = "driftward.name";

  private final SecurityIdentity identity;

  public SignedIn(SecurityIdentity identity) {
    this.identity = identity;
  }

  Actor actor() {
    var account = identity.getPrincipal().getName();
    @Nullable String name = identity.getAttribute(NAME);
    return new Actor(account, name == null ? account : name, identity.getRoles());
  }

  /** The wards to look at, or null for every ward. */
  @Nullable Set<String> wards() {
    return scope().all() ? null : scope().wards();
  }

  void mustSee(String ward) {
    if (!scope().sees(ward)) {
      throw Problems.otherWard();
    }
  }

  private WardScope scope() {
    @Nullable WardScope scope = identity.getAttribute(WardScope.ATTRIBUTE);
    return scope == null ? WardScope.NONE : scope;
  }
}
