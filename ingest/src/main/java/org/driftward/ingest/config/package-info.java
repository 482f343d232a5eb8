/** The settings of intake, and the beans that are made of them. */
@NullMarked
package org.driftward.ingest.config;

import org.jspecify.annotations.NullMarked;
