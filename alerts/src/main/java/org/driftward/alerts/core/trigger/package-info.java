/**
 * What a snapshot gives reason to worry about. Start reading at {@link
 * org.driftward.alerts.core.trigger.Triggers}.
 */
@NullMarked
package org.driftward.alerts.core.trigger;

import org.jspecify.annotations.NullMarked;
