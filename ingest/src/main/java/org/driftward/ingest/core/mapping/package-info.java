/**
 * What the codes of foreign systems mean in the words of the catalogue. Pure; read {@link
 * org.driftward.ingest.core.mapping.CodeMap} first. Where the rows come from is not known here.
 */
@NullMarked
package org.driftward.ingest.core.mapping;

import org.jspecify.annotations.NullMarked;
