/**
 * The door on Kafka: what others write to {@code driftward.inbox} goes through the gates of the
 * other doors, and what follows is kept in one transaction with how far the inbox was read. Read
 * {@link org.driftward.ingest.inbox.InboxPart} first.
 */
@NullMarked
package org.driftward.ingest.inbox;

import org.jspecify.annotations.NullMarked;
