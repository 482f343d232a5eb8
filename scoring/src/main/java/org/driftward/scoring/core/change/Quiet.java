package org.driftward.scoring.core.change;

/** Where the quiet period of a series stands: still forming, or settled for good. */
public sealed interface Quiet permits Forming, Settled {}
