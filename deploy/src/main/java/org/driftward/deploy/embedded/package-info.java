/**
 * The real broker and the real database for whoever has none yet, and the folder that keeps their
 * data. Knows nothing of Quarkus: all of it runs before Quarkus starts and after Quarkus has
 * stopped.
 */
@NullMarked
package org.driftward.deploy.embedded;

import org.jspecify.annotations.NullMarked;
