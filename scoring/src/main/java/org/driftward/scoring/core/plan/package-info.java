/** When the next set of observations is due, and what the newest set lacks. */
@NullMarked
package org.driftward.scoring.core.plan;

import org.jspecify.annotations.NullMarked;
