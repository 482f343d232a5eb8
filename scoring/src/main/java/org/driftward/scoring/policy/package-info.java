/**
 * Reads the {@code scoring} section of a hospital's policy file, YAML, and refuses a broken one at
 * start.
 */
@NullMarked
package org.driftward.scoring.policy;

import org.jspecify.annotations.NullMarked;
