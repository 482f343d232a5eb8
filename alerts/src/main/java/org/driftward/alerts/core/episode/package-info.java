/**
 * What becomes of concern: the course of one encounter, the states of its episode, and the
 * decisions that move them. Start reading at {@link org.driftward.alerts.core.episode.Escalation};
 * the states are in {@link org.driftward.alerts.core.episode.Stage} and tabulated in {@code
 * docs/episodes.md}.
 */
@NullMarked
package org.driftward.alerts.core.episode;

import org.jspecify.annotations.NullMarked;
