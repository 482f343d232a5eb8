/** What intake keeps in PostgreSQL: uploaded files, refusals, replays, feeds. */
@NullMarked
package org.driftward.ingest.store;

import org.jspecify.annotations.NullMarked;
