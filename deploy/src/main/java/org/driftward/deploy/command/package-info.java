/**
 * What the jar does besides serving: short commands that ask a running server over HTTP. A command
 * starts neither Quarkus nor anything embedded. Read {@link org.driftward.deploy.command.Commands}
 * first; a new command is one class named there.
 */
@NullMarked
package org.driftward.deploy.command;

import org.jspecify.annotations.NullMarked;
