package org.driftward.deploy.roles;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.EnumSet;
import java.util.Set;
import org.driftward.deploy.config.DeploySettings;
import org.driftward.ingest.contract.Role;

/** The roles this process plays. */
@Singleton
public class PlayedRoles {

  private final Set<Role> played;

  @Inject
  PlayedRoles(DeploySettings settings) {
    this(settings.roles());
  }

  PlayedRoles(Set<Role> roles) {
    if (roles.isEmpty()) {
      throw new IllegalArgumentException("driftward.roles names no role");
    }
    this.played = EnumSet.copyOf(roles);
  }

  public boolean plays(Role role) {
    return played.contains(role);
  }
}
