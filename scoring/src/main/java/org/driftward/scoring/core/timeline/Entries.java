package org.driftward.scoring.core.timeline;

import java.util.Iterator;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The stored entries of one encounter, as the timeline reads them. Read only. */
public interface Entries {

  /** The counting revision of an assessment, retracted or not. */
  Optional<Entry> find(String assessment);

  /**
   * Every entry later than {@code moment}, retracted ones among them, oldest first.
   *
   * @param moment null for the whole history
   */
  Iterator<Entry> after(@Nullable Moment moment);

  /**
   * The newest stored head that ends before {@code moment}, to fold on from.
   *
   * @param moment null for the newest of all
   */
  Optional<Head> checkpoint(@Nullable Moment moment);
}
