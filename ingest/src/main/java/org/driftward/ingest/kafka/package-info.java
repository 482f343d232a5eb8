/**
 * Intake on Kafka: sends what is accepted or refused and waits for the acknowledgement, and follows
 * the encounters. Plain Kafka clients.
 */
@NullMarked
package org.driftward.ingest.kafka;

import org.jspecify.annotations.NullMarked;
