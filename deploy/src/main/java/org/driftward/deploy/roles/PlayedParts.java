package org.driftward.deploy.roles;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.Comparator;
import java.util.List;
import org.driftward.ingest.contract.RolePart;

/** The parts of the played roles. */
@Singleton
public class PlayedParts {

  private final List<RolePart> parts;

  @Inject
  PlayedParts(PlayedRoles roles, @Any Instance<RolePart> all) {
    this.parts =
        all.stream()
            .filter(part -> roles.plays(part.role()))
            .sorted(Comparator.comparing(RolePart::role).thenComparing(RolePart::name))
            .toList();
  }

  /** By role, each role reading what those before it write. */
  public List<RolePart> inOrder() {
    return parts;
  }
}
