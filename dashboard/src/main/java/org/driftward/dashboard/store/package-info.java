/**
 * The read model in PostgreSQL, schema {@code dashboard}: {@link
 * org.driftward.dashboard.store.ReadModel} writes it, {@link
 * org.driftward.dashboard.store.StoredWards} reads it. SQL stands next to what it is for.
 */
@NullMarked
package org.driftward.dashboard.store;

import org.jspecify.annotations.NullMarked;
