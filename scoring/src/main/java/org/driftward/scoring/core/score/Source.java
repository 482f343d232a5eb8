package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Objects;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.scoring.core.Reading;
import org.jspecify.annotations.Nullable;

/**
 * A finding of the catalogue that feeds an input.
 *
 * @param key the finding, without site and side
 * @param unit UCUM code it must come in, or null for grades and words
 * @param pick which reading counts where the finding is taken at several sites
 * @param serves how long a reading serves where the policy says nothing
 */
public record Source(FindingKey key, @Nullable String unit, Pick pick, Duration serves) {

  /** Which of several readings at different sites counts. */
  public enum Pick {
    UNSITED,
    HIGHEST,
    LOWEST;

    boolean beats(BigDecimal challenger, BigDecimal holder) {
      int order = challenger.compareTo(holder);
      return this == HIGHEST ? order > 0 : order < 0;
    }
  }

  public Source {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(pick, "pick");
    if (serves.isZero() || serves.isNegative()) {
      throw new IllegalArgumentException(key.code() + " serves for " + serves);
    }
  }

  public String finding() {
    return key.code();
  }

  /** The reading as a number, or null if it is none or in another unit, which is never scored. */
  @Nullable BigDecimal number(Reading reading) {
    if (unit != null) {
      return reading.value() instanceof FindingValue.Quantity quantity
              && quantity.unit().equals(unit)
          ? quantity.value()
          : null;
    }
    return reading.value() instanceof FindingValue.Grade grade
        ? BigDecimal.valueOf(grade.grade())
        : null;
  }

  /** The reading as a person writes it, with its unit. */
  String words(Reading reading) {
    var plain = finding() + " " + reading.value().plain();
    return unit == null ? plain : plain + " " + unit;
  }
}
