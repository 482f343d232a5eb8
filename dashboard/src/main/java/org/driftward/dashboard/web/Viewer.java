package org.driftward.dashboard.web;

import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.RequestScoped;
import java.util.Set;
import org.driftward.ingest.contract.WardScope;

/** The signed-in person or program that is looking. */
@RequestScoped
public class Viewer {

  /** Name of the security identity's attribute that holds the person's name. */
  public static final String NAME_ATTRIBUTE = "driftward.name";

  private final SecurityIdentity identity;

  public Viewer(SecurityIdentity identity) {
    this.identity = identity;
  }

  /** The sign-in name. */
  public String account() {
    return identity.getPrincipal().getName();
  }

  /** As people know them; the sign-in name where there is no other. */
  public String name() {
    String name = identity.getAttribute(NAME_ATTRIBUTE);
    return name == null ? account() : name;
  }

  public Set<String> roles() {
    return identity.getRoles();
  }

  public WardScope scope() {
    WardScope scope = identity.getAttribute(WardScope.ATTRIBUTE);
    return scope == null ? WardScope.NONE : scope;
  }

  public boolean sees(String ward) {
    return scope().sees(ward);
  }
}
