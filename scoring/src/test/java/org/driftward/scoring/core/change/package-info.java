/** Checks against published worked examples, an independent library, and properties. */
@NullMarked
package org.driftward.scoring.core.change;

import org.jspecify.annotations.NullMarked;
