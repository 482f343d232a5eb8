/**
 * What may be recorded of a response team's call. Start reading at {@link
 * org.driftward.alerts.core.call.Calls}.
 */
@NullMarked
package org.driftward.alerts.core.call;

import org.jspecify.annotations.NullMarked;
