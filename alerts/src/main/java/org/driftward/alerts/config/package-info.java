/** The settings of alerts, and the beans that are made of them. */
@NullMarked
package org.driftward.alerts.config;

import org.jspecify.annotations.NullMarked;
