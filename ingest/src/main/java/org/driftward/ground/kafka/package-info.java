/** How to reach Kafka, and how a group reads from it. */
@NullMarked
package org.driftward.ground.kafka;

import org.jspecify.annotations.NullMarked;
