/**
 * How long one assessment takes, by the length of the history it comes into. JMH; run {@link
 * org.driftward.scoring.bench.TimelineBenchmark}'s main method on an idle machine.
 */
@NullMarked
package org.driftward.scoring.bench;

import org.jspecify.annotations.NullMarked;
