/**
 * How the journal is chained and checked: canonical text, hashes, and what each kind of happening
 * is written as. Start reading at {@link org.driftward.alerts.core.journal.Chain}.
 */
@NullMarked
package org.driftward.alerts.core.journal;

import org.jspecify.annotations.NullMarked;
