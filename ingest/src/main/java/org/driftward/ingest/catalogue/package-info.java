/** Reads the catalogue of findings from its files and refuses a broken one at start. */
@NullMarked
package org.driftward.ingest.catalogue;

import org.jspecify.annotations.NullMarked;
