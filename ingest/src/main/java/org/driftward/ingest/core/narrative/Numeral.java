package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A number as it stands in the text.
 *
 * @param first index of its first token
 * @param end index after its last
 * @param value what it says
 * @param tail a single digit that was said right after ("thirty nine two"), or null: 39.2 where the
 *     finding has decimals, and two numbers elsewhere
 * @param doubtful whether it may be heard otherwise, or stands next to another number
 */
record Numeral(int first, int end, BigDecimal value, @Nullable Integer tail, boolean doubtful) {

  Numeral(int first, int end, BigDecimal value) {
    this(first, end, value, null, false);
  }

  /** The tail as the first decimal. */
  BigDecimal withTail() {
    return tail == null ? value : value.add(BigDecimal.valueOf(tail, 1));
  }

  boolean whole() {
    return value.stripTrailingZeros().scale() <= 0;
  }
}
