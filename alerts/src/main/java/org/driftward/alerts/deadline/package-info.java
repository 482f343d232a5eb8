/** Looks, with the wall clock, for clocks that have run out. Timers are rows, not threads. */
@NullMarked
package org.driftward.alerts.deadline;

import org.jspecify.annotations.NullMarked;
