/** What two judgements of the same moment say differently, in words that people can weigh. */
@NullMarked
package org.driftward.scoring.core.compare;

import org.jspecify.annotations.NullMarked;
