package org.driftward.ingest.contract;

import java.util.Comparator;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Names one series of values of one patient: what, where on the body, which side.
 *
 * @param code a code of the catalogue
 * @param site a site that the catalogue lists for the code, or null where it has none
 * @param side left or right, or null where the finding has no side
 */
public record FindingKey(String code, @Nullable String site, @Nullable Side side)
    implements Comparable<FindingKey> {

  private static final Comparator<FindingKey> WHERE =
      Comparator.comparing(
              FindingKey::site, Comparator.nullsFirst(Comparator.<String>naturalOrder()))
          .thenComparing(FindingKey::side, Comparator.nullsFirst(Comparator.naturalOrder()));

  public FindingKey {
    Objects.requireNonNull(code, "code");
  }

  public static FindingKey of(String code) {
    return new FindingKey(code, null, null);
  }

  @Override
  public int compareTo(FindingKey other) {
    // The code alone decides nearly always; every look into a picture passes here.
    int order = code.compareTo(other.code);
    return order == 0 ? WHERE.compare(this, other) : order;
  }
}
