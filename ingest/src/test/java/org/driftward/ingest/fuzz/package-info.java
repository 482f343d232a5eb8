/** Broken inputs by the thousand, from fixed seeds, against the real reading code. */
@NullMarked
package org.driftward.ingest.fuzz;

import org.jspecify.annotations.NullMarked;
