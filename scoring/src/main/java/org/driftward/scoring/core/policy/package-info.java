/**
 * What a hospital may set about scoring: how long values serve, what a quiet period is, when drift
 * and trend count, how often a patient is observed. Start reading at {@link
 * org.driftward.scoring.core.policy.ScoringPolicy}. Knows nothing of files.
 */
@NullMarked
package org.driftward.scoring.core.policy;

import org.jspecify.annotations.NullMarked;
