/**
 * Editions of the policy and the score definitions: as they travel, how they are read, and which
 * are in force. Start reading at {@link org.driftward.scoring.edition.EditionsInForce}.
 */
@NullMarked
package org.driftward.scoring.edition;

import org.jspecify.annotations.NullMarked;
