/**
 * Who is on duty, and to whom an episode passes when its owner goes. Knows nothing of episodes but
 * ward and bed.
 */
@NullMarked
package org.driftward.alerts.core.shift;

import org.jspecify.annotations.NullMarked;
