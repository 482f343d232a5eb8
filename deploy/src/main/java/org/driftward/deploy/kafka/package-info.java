/** How this process reaches Kafka, and the topics that must be there. */
@NullMarked
package org.driftward.deploy.kafka;

import org.jspecify.annotations.NullMarked;
