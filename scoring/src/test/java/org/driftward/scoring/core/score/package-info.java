/**
 * The engine and the shipped scores against their published tables. Where a check names a source by
 * author and year, the numbers were read in print; "from memory" and "engineering choice" mean
 * that.
 */
@NullMarked
package org.driftward.scoring.core.score;

import org.jspecify.annotations.NullMarked;
