/**
 * What {@code deploy/bench} measures, each thing beside something it can be compared with. No test:
 * a time that is asserted on a busy machine says nothing. Read {@link
 * org.driftward.deploy.bench.Bench} first; a new measurement is one class named there.
 */
@NullMarked
package org.driftward.deploy.bench;

import org.jspecify.annotations.NullMarked;
