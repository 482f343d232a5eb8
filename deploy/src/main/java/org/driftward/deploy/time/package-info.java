/** The one clock: the machine's, or in the demo one that runs faster. */
@NullMarked
package org.driftward.deploy.time;

import org.jspecify.annotations.NullMarked;
