/** What the composition may know about the dashboard: accounts, and whether this is a demo. */
@NullMarked
package org.driftward.dashboard.contract;

import org.jspecify.annotations.NullMarked;
