/**
 * Reads score definitions from YAML files and refuses a broken one at start, with file and line.
 * The only place that knows how a definition is written; {@code core.score} knows what it means.
 */
@NullMarked
package org.driftward.scoring.definition;

import org.jspecify.annotations.NullMarked;
