/** The observation plan against the published frequencies. */
@NullMarked
package org.driftward.scoring.core.plan;

import org.jspecify.annotations.NullMarked;
