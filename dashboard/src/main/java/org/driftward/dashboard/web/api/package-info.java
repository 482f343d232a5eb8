/**
 * The JSON calls of the dashboard, as {@code docs/} fixes them. Thin: it asks who is asking, reads
 * through {@code core}, and writes one of the records named {@code …Json}.
 */
@NullMarked
package org.driftward.dashboard.web.api;

import org.jspecify.annotations.NullMarked;
