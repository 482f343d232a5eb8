package org.driftward.alerts.core.trigger;

import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/** One finding at one place of the body, as rules name it. */
final class Series {

  private Series() {}

  static String of(String code, @Nullable String site, @Nullable Side side) {
    return code + (site == null ? "" : "-" + site) + (side == null ? "" : "-" + side.word());
  }
}
