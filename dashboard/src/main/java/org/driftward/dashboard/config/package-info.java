/** The dashboard's settings, typed and documented. */
@NullMarked
package org.driftward.dashboard.config;

import org.jspecify.annotations.NullMarked;
