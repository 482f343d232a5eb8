/**
 * What the pages and the JSON calls show, and in which order. Plain records and pure functions: no
 * framework, no I/O, no clock but the one passed in.
 *
 * <p>Read {@link org.driftward.dashboard.core.Card} first, then {@link
 * org.driftward.dashboard.core.Concern} for the order of a board.
 */
@NullMarked
package org.driftward.dashboard.core;

import org.jspecify.annotations.NullMarked;
