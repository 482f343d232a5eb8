package org.driftward.dashboard.web.page;

import io.quarkus.security.identity.SecurityIdentity;
import java.util.Objects;
import org.driftward.alerts.contract.Actor;
import org.driftward.dashboard.screen.Reader;
import org.driftward.ingest.contract.WardScope;

/**
 * Who asks for a page.
 *
 * @param name as people know them
 * @param scope the wards they see
 */
record Visit(Reader reader, String name, WardScope scope) {

  /** Attribute of the security identity that holds the person's name. */
  private static final String NAME = "driftward.name";

  static Visit of(SecurityIdentity identity) {
    String account = identity.getPrincipal().getName();
    String name = identity.getAttribute(NAME);
    WardScope scope = identity.getAttribute(WardScope.ATTRIBUTE);
    return new Visit(
        new Reader(account, identity.getRoles()),
        Objects.requireNonNullElse(name, account),
        Objects.requireNonNullElse(scope, WardScope.NONE));
  }

  Actor actor() {
    return new Actor(reader.account(), name, reader.roles());
  }

  boolean sees(String ward) {
    return scope.sees(ward);
  }
}
