/** Whether this process does its work now, and if not, which part and why. */
@NullMarked
package org.driftward.deploy.health;

import org.jspecify.annotations.NullMarked;
