package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.core.Picture;
import org.driftward.scoring.core.Reading;
import org.jspecify.annotations.Nullable;

/**
 * The fresh part of a picture during one call: every finding is looked up once, however many scores
 * ask for it. Not thread-safe, never kept.
 */
final class Sight {

  private static final Look NOTHING = new Look(null, true);

  private final Picture picture;
  private final Function<String, ? extends @Nullable Duration> validity;
  private final History history;
  private final Map<String, Look> looks = new HashMap<>(32);

  /**
   * @param reading the newest; none that the policy finds too old
   * @param judged whether the policy has judged its age; else each source does
   */
  private record Look(@Nullable Reading reading, boolean judged) {}

  Sight(Picture picture, Function<String, ? extends @Nullable Duration> validity, History history) {
    this.picture = picture;
    this.validity = validity;
    this.history = history;
  }

  /** The newest reading of the source, or null if there is none or it no longer serves. */
  @Nullable Reading fresh(Source source) {
    if (source.pick() != Source.Pick.UNSITED) {
      return pick(source);
    }
    var look = looks.get(source.finding());
    if (look == null) {
      look = look(source);
      looks.put(source.finding(), look);
    }
    var reading = look.reading;
    return reading == null || look.judged || serves(reading, source.serves()) ? reading : null;
  }

  private Look look(Source source) {
    var reading = picture.newest().get(source.key());
    if (reading == null) {
      return NOTHING;
    }
    var serves = validity.apply(source.finding());
    if (serves == null) {
      return new Look(reading, false);
    }
    return serves(reading, serves) ? new Look(reading, true) : NOTHING;
  }

  /** The newest reading of the source as a number in its unit, or null. */
  @Nullable BigDecimal number(Source source) {
    var reading = fresh(source);
    return reading == null ? null : source.number(reading);
  }

  /** Readings of the source from a time up to the picture, oldest first. */
  List<Reading> since(Source source, Instant from) {
    return history.since(source.finding(), from);
  }

  Duration serves(Source source) {
    var policy = validity.apply(source.finding());
    return policy == null ? source.serves() : policy;
  }

  private boolean serves(Reading reading, Duration serves) {
    return !reading.takenAt().plus(serves).isBefore(picture.asOf());
  }

  /** The highest or lowest of the fresh readings at all sites of the body. */
  private @Nullable Reading pick(Source source) {
    var serves = serves(source);
    Reading best = null;
    BigDecimal most = null;
    for (var reading : picture.newest().tailMap(FindingKey.of(source.finding())).values()) {
      if (!reading.code().equals(source.finding())) {
        break;
      }
      var number = source.number(reading);
      if (number != null
          && serves(reading, serves)
          && (most == null || source.pick().beats(number, most))) {
        best = reading;
        most = number;
      }
    }
    return best;
  }
}
