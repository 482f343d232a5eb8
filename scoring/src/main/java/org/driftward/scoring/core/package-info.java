/**
 * The pure core of scoring: functions from records to records. No framework, no I/O, no clock but
 * the one passed in. Start reading at {@code core.timeline}.
 */
@NullMarked
package org.driftward.scoring.core;

import org.jspecify.annotations.NullMarked;
