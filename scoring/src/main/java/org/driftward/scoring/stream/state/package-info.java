/**
 * How the history of an encounter is kept in the state store of a task: small increments, compact
 * bytes, one range of keys for each encounter in the order of clinical time. Start reading at
 * {@link org.driftward.scoring.stream.state.StoredHistory}.
 */
@NullMarked
package org.driftward.scoring.stream.state;

import org.jspecify.annotations.NullMarked;
