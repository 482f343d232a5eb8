/** Sends alarms out of the house: mail and signed webhooks. Knows no rule about when. */
@NullMarked
package org.driftward.alerts.notify;

import org.jspecify.annotations.NullMarked;
