/**
 * Values that call somebody by themselves, beside every score. Start reading at {@link
 * org.driftward.scoring.core.urgent.UrgentFindings}.
 */
@NullMarked
package org.driftward.scoring.core.urgent;

import org.jspecify.annotations.NullMarked;
