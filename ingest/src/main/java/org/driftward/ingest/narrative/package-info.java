/** Reads the words by which findings are said from their files and refuses broken ones at start. */
@NullMarked
package org.driftward.ingest.narrative;

import org.jspecify.annotations.NullMarked;
