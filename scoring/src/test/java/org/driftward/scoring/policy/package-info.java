/** The policy file, whole and broken. */
@NullMarked
package org.driftward.scoring.policy;

import org.jspecify.annotations.NullMarked;
