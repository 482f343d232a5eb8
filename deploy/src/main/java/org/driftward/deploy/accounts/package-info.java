/** Lets the first person in. */
@NullMarked
package org.driftward.deploy.accounts;

import org.jspecify.annotations.NullMarked;
