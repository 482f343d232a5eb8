/** Tests of how the contract becomes JSON. */
@NullMarked
package org.driftward.scoring.json;

import org.jspecify.annotations.NullMarked;
