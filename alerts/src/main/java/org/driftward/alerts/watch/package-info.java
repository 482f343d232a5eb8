/** Says again and again that this process raises and sends alarms, and what is wrong with it. */
@NullMarked
package org.driftward.alerts.watch;

import org.jspecify.annotations.NullMarked;
