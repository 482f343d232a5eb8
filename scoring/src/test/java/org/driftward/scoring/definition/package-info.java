/** Which definition files are taken, and at which line a broken one is refused. */
@NullMarked
package org.driftward.scoring.definition;

import org.jspecify.annotations.NullMarked;
