package org.driftward.ingest.contract;

import org.driftward.ground.part.Part;

/**
 * A part of a role. The composition point in {@code deploy} starts the parts of the roles this
 * process plays, in order, and stops them in reverse.
 */
public interface RolePart extends Part {

  Role role();
}
