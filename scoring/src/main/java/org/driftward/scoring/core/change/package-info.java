/**
 * Each patient compared with themselves: baseline, drift, trend and changed findings. Pure and
 * incremental: one small {@link org.driftward.scoring.core.change.SeriesState} for each series, fed
 * with readings in the order of clinical time. Start reading at {@link
 * org.driftward.scoring.core.change.ChangeDetector}. Knows nothing of scores and how they are made.
 */
@NullMarked
package org.driftward.scoring.core.change;

import org.jspecify.annotations.NullMarked;
