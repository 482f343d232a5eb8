/** How the records of the contracts become JSON, with Jackson. Nobody outside sees Jackson. */
@NullMarked
package org.driftward.ingest.json;

import org.jspecify.annotations.NullMarked;
