/**
 * The manager's measures: pure functions from what the journal and the history hold to figures that
 * show what they rest on. Start reading at {@link org.driftward.alerts.core.audit.Audit}. Published
 * definitions are named at each measure; the operational forms are ours.
 */
@NullMarked
package org.driftward.alerts.core.audit;

import org.jspecify.annotations.NullMarked;
