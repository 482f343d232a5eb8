package org.driftward.scoring.core.change;

/** The quiet period is over; the baseline no longer moves until a restart. */
public record Settled(Baseline baseline) implements Quiet {}
