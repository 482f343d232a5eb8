/**
 * The one failure policy. A failure lies either in one item (it cannot be read, or what it says
 * cannot be kept), or in what stands behind us (Kafka, the database, a file system), or in the
 * virtual machine.
 *
 * <ul>
 *   <li>An item is worked by itself, set aside with its bytes, and the others go on; health, the
 *       pages it concerns and the log say so, in the same words.
 *   <li>What stands behind us comes back, so the worker tries again with longer and longer pauses
 *       and says that it is ill; nothing is skipped meanwhile.
 *   <li>A virtual machine at its end ends, and is started anew from outside.
 * </ul>
 *
 * {@link org.driftward.ground.failure.Failures} tells the three apart, {@link
 * org.driftward.ground.failure.Isolation} works items apart from each other, {@link
 * org.driftward.ground.failure.Quarantine} keeps them, and {@link
 * org.driftward.ground.part.Supervisor} sees the rest.
 */
@NullMarked
package org.driftward.ground.failure;

import org.jspecify.annotations.NullMarked;
