/**
 * Scores the whole log again under an edition that is not in force, beside the one that is, reports
 * every difference, and adopts the edition if somebody says so. Start reading at {@link
 * org.driftward.scoring.rescore.Rescores}.
 */
@NullMarked
package org.driftward.scoring.rescore;

import org.jspecify.annotations.NullMarked;
