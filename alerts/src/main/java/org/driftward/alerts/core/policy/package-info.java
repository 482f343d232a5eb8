/**
 * The escalation section of a hospital's policy as validated records. Every number here is local
 * policy; the shipped defaults name their source in {@code policy/escalation.yaml}.
 */
@NullMarked
package org.driftward.alerts.core.policy;

import org.jspecify.annotations.NullMarked;
