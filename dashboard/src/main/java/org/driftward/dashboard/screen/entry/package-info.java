/**
 * What stands on the bedside entry page. Everything is derived from the catalogue: no finding is
 * named here. Read {@link org.driftward.dashboard.screen.entry.EntryScreen} first; {@link
 * org.driftward.dashboard.screen.entry.EnteredForm} reads back what a person filled in.
 */
@NullMarked
package org.driftward.dashboard.screen.entry;

import org.jspecify.annotations.NullMarked;
