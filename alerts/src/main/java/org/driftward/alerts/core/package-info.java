/**
 * The pure core of alerts: what raises concern, what becomes of it, who is told, and how the
 * journal is chained. Functions from records to records; no framework, no I/O, no clock but the
 * time passed in. Start reading at {@code core.episode.Escalation}.
 */
@NullMarked
package org.driftward.alerts.core;

import org.jspecify.annotations.NullMarked;
