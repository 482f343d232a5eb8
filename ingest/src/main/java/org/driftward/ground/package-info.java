/**
 * What two modules or more stand on: parts that run, Kafka, PostgreSQL, what becomes of a failure.
 * It knows nothing of what the project is for, and nothing of the modules above it; what only one
 * of them needs stands there.
 */
@NullMarked
package org.driftward.ground;

import org.jspecify.annotations.NullMarked;
