/** Tests of re-scoring on a real broker. */
@NullMarked
package org.driftward.scoring.rescore;

import org.jspecify.annotations.NullMarked;
