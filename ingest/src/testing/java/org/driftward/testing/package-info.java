/**
 * What the tests of several modules stand on. Each of those modules compiles this folder among its
 * own tests, so that no test class of one module reaches the class path of another.
 */
@NullMarked
package org.driftward.testing;

import org.jspecify.annotations.NullMarked;
