/** Which roles this process plays, and the start and stop of their parts. */
@NullMarked
package org.driftward.deploy.roles;

import org.jspecify.annotations.NullMarked;
