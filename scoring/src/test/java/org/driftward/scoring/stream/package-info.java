/** Tests of the topology, in the test driver of Kafka Streams, with its real state store. */
@NullMarked
package org.driftward.scoring.stream;

import org.jspecify.annotations.NullMarked;
