/**
 * What the rest of the house may know about alerts: episodes, what people may do to them, care
 * plans, and the journal. Plain records and interfaces.
 */
@NullMarked
package org.driftward.alerts.contract;

import org.jspecify.annotations.NullMarked;
