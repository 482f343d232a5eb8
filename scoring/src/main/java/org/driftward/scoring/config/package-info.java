/** The settings of scoring, and the beans that are made of them. */
@NullMarked
package org.driftward.scoring.config;

import org.jspecify.annotations.NullMarked;
