package org.driftward.scoring.core.score;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How an input comes from findings. */
public sealed interface Measure permits Recorded, Combined, NewestOf, Output {

  /** The input as of the picture, or null if the findings do not settle it. */
  @Nullable Found find(Input input, Sight sight);

  /** Adds the codes of the findings that have to be measured to settle the input. */
  void name(Sight sight, Collection<String> missing);

  /** Every finding it may use. */
  List<Source> sources();
}
