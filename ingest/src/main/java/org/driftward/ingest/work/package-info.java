/** Threads of intake that do the same again and again. */
@NullMarked
package org.driftward.ingest.work;

import org.jspecify.annotations.NullMarked;
