/**
 * The timeline on Kafka Streams. {@link org.driftward.scoring.stream.ScoringTopology} says what is
 * connected to what, {@link org.driftward.scoring.stream.TimelineProcessor} is the glue, {@link
 * org.driftward.scoring.stream.ScoringStreams} runs it. What to decide is decided in {@code
 * core.timeline}.
 */
@NullMarked
package org.driftward.scoring.stream;

import org.jspecify.annotations.NullMarked;
