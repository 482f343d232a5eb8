/**
 * What alerts reads from Kafka and sends to it. Offsets are committed after the database has kept
 * what followed; a record that comes again changes nothing.
 */
@NullMarked
package org.driftward.alerts.stream;

import org.jspecify.annotations.NullMarked;
