package org.driftward.dashboard.screen.entry;

import java.util.Optional;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.Word;

/**
 * How a form names the field of a finding: {@code heart-rate}, {@code pupil-size//left}, {@code
 * breath-sounds/front-upper/left}. Codes and sites hold no slash.
 */
final class FieldName {

  private FieldName() {}

  static String of(FindingKey key) {
    if (key.site() == null && key.side() == null) {
      return key.code();
    }
    return key.code()
        + "/"
        + (key.site() == null ? "" : key.site())
        + (key.side() == null ? "" : "/" + key.side().word());
  }

  /** Empty where the name is none of ours. */
  static Optional<FindingKey> key(String name) {
    var parts = name.split("/", -1);
    if (parts.length > 3 || parts[0].isEmpty()) {
      return Optional.empty();
    }
    String site = parts.length > 1 && !parts[1].isEmpty() ? parts[1] : null;
    try {
      Side side = parts.length > 2 ? Word.parse(Side.class, parts[2]) : null;
      return Optional.of(new FindingKey(parts[0], site, side));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }
}
