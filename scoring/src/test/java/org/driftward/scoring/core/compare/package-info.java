/** Tests of the comparison of two judgements. */
@NullMarked
package org.driftward.scoring.core.compare;

import org.jspecify.annotations.NullMarked;
