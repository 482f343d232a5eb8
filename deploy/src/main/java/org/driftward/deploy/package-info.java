/**
 * The one runnable application. {@link org.driftward.deploy.Main} starts what is embedded and then
 * Quarkus; everything else composes the parts that the other modules bring. Read {@code Main}
 * first, then {@code roles.RoleLauncher}.
 */
@NullMarked
package org.driftward.deploy;

import org.jspecify.annotations.NullMarked;
