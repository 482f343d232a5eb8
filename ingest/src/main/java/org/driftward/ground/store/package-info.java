/** The one way to PostgreSQL. SQL stands next to what it is for, in the modules. */
@NullMarked
package org.driftward.ground.store;

import org.jspecify.annotations.NullMarked;
