package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.Objects;

/**
 * A source of assessments, as far as a ward has heard of it.
 *
 * @param source as assessments name it, for example {@code hl7}
 * @param last when its newest assessment was recorded
 */
public record Feed(String source, Instant last) {
  public Feed {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(last, "last");
  }
}
