/** What an operator may set, in one typed place. Documented in {@code docs/operations.md}. */
@NullMarked
package org.driftward.deploy.config;

import org.jspecify.annotations.NullMarked;
