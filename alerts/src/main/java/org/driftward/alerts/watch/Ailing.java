package org.driftward.alerts.watch;

import java.util.HashSet;
import java.util.Set;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/**
 * The parts of alerts that are ill at two looks running: one failure mends itself before a person
 * would notice. Used by one thread.
 */
final class Ailing {

  private Set<String> before = Set.of();

  /** Names of those that were ill at the last look and still are. */
  Set<String> among(Iterable<RolePart> parts) {
    var ill = new HashSet<String>();
    for (var part : parts) {
      if (part.role() == Role.ALERTS && !part.condition().well()) {
        ill.add(part.name());
      }
    }
    var still = new HashSet<>(ill);
    still.retainAll(before);
    before = ill;
    return still;
  }
}
