/** What keeps the intake desk up to date, and what does the replays it asks for. */
@NullMarked
package org.driftward.ingest.desk;

import org.jspecify.annotations.NullMarked;
