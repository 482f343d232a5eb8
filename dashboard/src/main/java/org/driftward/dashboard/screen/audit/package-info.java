/** The manager's page in words and numbers: pure. Start at {@code AuditScreen}. */
@NullMarked
package org.driftward.dashboard.screen.audit;

import org.jspecify.annotations.NullMarked;
