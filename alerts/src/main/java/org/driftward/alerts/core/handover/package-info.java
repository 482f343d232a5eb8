/**
 * What is said when a patient is handed over. Start reading at {@link
 * org.driftward.alerts.core.handover.Isbar}.
 */
@NullMarked
package org.driftward.alerts.core.handover;

import org.jspecify.annotations.NullMarked;
