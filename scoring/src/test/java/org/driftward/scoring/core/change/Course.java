package org.driftward.scoring.core.change;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.core.Reading;
import org.jspecify.annotations.Nullable;

/** One series of one invented patient, told value by value. */
final class Course {

  static final Instant START = Instant.parse("2026-01-05T06:00:00Z");

  private final ChangeDetector detector;
  private final FindingKey key;
  private final @Nullable String unit;
  private SeriesState state = SeriesState.empty();
  private Instant now = START;
  private Reading newest;

  Course(ChangeDetector detector, FindingKey key, @Nullable String unit) {
    this.detector = detector;
    this.key = key;
    this.unit = unit;
    this.newest = new Reading(key, new FindingValue.Grade(0), START, "none");
  }

  static Course of(ChangeDetector detector, String code, @Nullable String unit) {
    return new Course(detector, FindingKey.of(code), unit);
  }

  /** Values an hour apart; the first one at {@link #START}. */
  Course hourly(double... values) {
    for (double value : values) {
      at(now, value);
      now = now.plus(Duration.ofHours(1));
    }
    return this;
  }

  Course hourly(String... words) {
    for (var word : words) {
      at(now, new FindingValue.Coded(word));
      now = now.plus(Duration.ofHours(1));
    }
    return this;
  }

  Course at(Instant time, double value) {
    return at(
        time,
        unit == null
            ? new FindingValue.Grade((int) value)
            : new FindingValue.Quantity(BigDecimal.valueOf(value), unit));
  }

  Course at(Instant time, FindingValue value) {
    now = time;
    newest = new Reading(key, value, time, "a-1");
    state = detector.series(newest).advance(state, newest);
    return this;
  }

  Course restart() {
    state = state.restarted(now);
    return this;
  }

  Course reload() {
    state = SeriesState.decode(state.encode());
    return this;
  }

  SeriesState state() {
    return state;
  }

  Instant now() {
    return now;
  }

  Optional<Drift> drift() {
    return detector.series(newest).drift(state, newest);
  }

  Optional<ChangedFinding> changed() {
    return detector.series(newest).changed(state, newest);
  }

  Optional<Trend> trend(@Nullable Double up, @Nullable Double down) {
    return detector.series(newest).trend(state, newest, above -> above ? up : down);
  }
}
