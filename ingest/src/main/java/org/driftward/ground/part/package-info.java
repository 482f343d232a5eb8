/** What runs in a process: its life cycle, the one repeating worker, and who sees it fail. */
@NullMarked
package org.driftward.ground.part;

import org.jspecify.annotations.NullMarked;
