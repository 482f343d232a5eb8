/**
 * The whole way, on the packaged application as a process of its own, with its real broker and
 * database, on free ports. A test class shares one {@link org.driftward.deploy.whole.RunningApp}
 * with others by {@link org.driftward.deploy.whole.WithRunningApp}, or starts one of its own.
 */
@NullMarked
package org.driftward.deploy.whole;

import org.jspecify.annotations.NullMarked;
