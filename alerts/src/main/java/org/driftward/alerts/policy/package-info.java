/** Reads the escalation section of a policy from YAML and refuses a broken one at start. */
@NullMarked
package org.driftward.alerts.policy;

import org.jspecify.annotations.NullMarked;
