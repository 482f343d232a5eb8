/** Codes of foreign systems on the pages of intake: which nobody has mapped, and how to map one. */
@NullMarked
package org.driftward.dashboard.screen.codes;

import org.jspecify.annotations.NullMarked;
