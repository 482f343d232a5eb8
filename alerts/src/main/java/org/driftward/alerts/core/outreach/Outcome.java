package org.driftward.alerts.core.outreach;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/** What became of one attempt. The words name no address and no patient. */
public sealed interface Outcome {

  /** The receiving server has taken it. */
  record Taken() implements Outcome {}

  /**
   * It may work later.
   *
   * @param after not before this time, as the receiver asked, or null
   */
  record Failed(String why, @Nullable Duration after) implements Outcome {}

  /** The same will be refused again. */
  record Refused(String why) implements Outcome {}
}
