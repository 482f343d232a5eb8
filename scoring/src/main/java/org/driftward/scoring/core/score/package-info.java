/**
 * The scoring engine: an interpreter of score definitions. It knows no score by name, reads no file
 * and asks no clock. Start reading at {@link org.driftward.scoring.core.score.ScoreBook}, then
 * {@link org.driftward.scoring.core.score.ScoreDefinition}.
 */
@NullMarked
package org.driftward.scoring.core.score;

import org.jspecify.annotations.NullMarked;
