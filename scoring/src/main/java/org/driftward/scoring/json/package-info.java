/** How the records of scoring's contract become JSON where Jackson needs help. */
@NullMarked
package org.driftward.scoring.json;

import org.jspecify.annotations.NullMarked;
