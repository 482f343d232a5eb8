/**
 * The history of an encounter, and what it says at each of its moments.
 *
 * <p>A history is a set: the counting revision of each assessment, the facts of the encounter, the
 * care plans. What is said of a moment is a function of that set, so the order of arrival cannot
 * matter. {@link org.driftward.scoring.core.timeline.Timeline} is where to start: a record newer
 * than the {@link org.driftward.scoring.core.timeline.Head} moves it one step on; any other is
 * folded in from the nearest earlier checkpoint, and whatever that changes is said again.
 *
 * <p>Pure: it reads the past through {@link org.driftward.scoring.core.timeline.Entries}, and
 * returns what to keep and what to say as an {@link org.driftward.scoring.core.timeline.Outcome}.
 */
@NullMarked
package org.driftward.scoring.core.timeline;

import org.jspecify.annotations.NullMarked;
