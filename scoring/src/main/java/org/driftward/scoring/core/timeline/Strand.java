package org.driftward.scoring.core.timeline;

import java.util.Objects;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.change.SeriesState;
import org.jspecify.annotations.Nullable;

/**
 * One series as of its newest reading. Drift, change and trend are what its state says of that
 * reading; they are kept because most series do not move with most assessments.
 */
public record Strand(
    Reading newest,
    SeriesState state,
    @Nullable Drift drift,
    @Nullable ChangedFinding changed,
    @Nullable Trend trend) {
  public Strand {
    Objects.requireNonNull(newest, "newest");
    Objects.requireNonNull(state, "state");
  }

  /** As it is stored: {@link Judge#revived} says again what follows from the state. */
  public static Strand bare(Reading newest, SeriesState state) {
    return new Strand(newest, state, null, null, null);
  }
}
