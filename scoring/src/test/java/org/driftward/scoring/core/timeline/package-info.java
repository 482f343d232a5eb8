/** Tests of the timeline: one history, whatever way it arrives. */
@NullMarked
package org.driftward.scoring.core.timeline;

import org.jspecify.annotations.NullMarked;
