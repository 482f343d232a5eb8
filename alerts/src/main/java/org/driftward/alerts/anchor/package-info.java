/** Writes the journal's anchors to a file that the database's owner cannot reach. */
@NullMarked
package org.driftward.alerts.anchor;

import org.jspecify.annotations.NullMarked;
