/** Findings computed from others of the same assessment. Pure. */
@NullMarked
package org.driftward.ingest.core.derive;

import org.jspecify.annotations.NullMarked;
