/**
 * The pure core of intake: functions from what was sent to records or to a list of everything that
 * is wrong with it. No framework, no I/O, no clock but the one passed in. Start reading at {@link
 * org.driftward.ingest.core.IntakeRules}.
 */
@NullMarked
package org.driftward.ingest.core;

import org.jspecify.annotations.NullMarked;
