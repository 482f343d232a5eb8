/**
 * Tests of the packaged application as a real child process, with its real broker and database. A
 * test class asks for a {@link org.driftward.deploy.running.RunningApp} with {@link
 * org.driftward.deploy.running.WithRunningApp}, or starts one of its own.
 */
@NullMarked
package org.driftward.deploy.running;

import org.jspecify.annotations.NullMarked;
