/** How the parts of alerts that run do so: one thread that repeats, and backs off from failure. */
@NullMarked
package org.driftward.alerts.work;

import org.jspecify.annotations.NullMarked;
