/**
 * Understands an examination that was said or typed: tokens, then phrases and numbers, then
 * statements, then findings. Knows no finding and nearly no word by itself; both come from files.
 * Start reading at {@link org.driftward.ingest.core.narrative.NarrativeEngine}.
 */
@NullMarked
package org.driftward.ingest.core.narrative;

import org.jspecify.annotations.NullMarked;
