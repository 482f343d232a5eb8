/**
 * How much scoring costs beside what it is built on and beside what a hospital might do instead.
 * Run by {@code deploy/bench}; start reading at {@link org.driftward.deploy.bench.ScoringBench}.
 */
@NullMarked
package org.driftward.deploy.bench;

import org.jspecify.annotations.NullMarked;
