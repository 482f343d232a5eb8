/**
 * Keeps courses, episodes, deadlines, care plans, the journal and the outbox in PostgreSQL. Plain
 * SQL; every change of a course is one transaction with its journal entries, its deadlines and what
 * is to be sent. Start reading at {@link org.driftward.alerts.store.Courses}.
 *
 * <p>Locks are taken in one order, so that nobody waits in a circle: courses by encounter, then the
 * end of the journal.
 */
@NullMarked
package org.driftward.alerts.store;

import org.jspecify.annotations.NullMarked;
