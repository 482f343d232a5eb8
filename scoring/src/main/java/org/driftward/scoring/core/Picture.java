package org.driftward.scoring.core;

import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Collections;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import org.driftward.ingest.contract.FindingKey;

/**
 * What is known of a patient at one moment: the newest reading of every series, however old.
 *
 * @param asOf no reading is later
 * @param newest not copied, since a picture is made for every assessment; the caller leaves it as
 *     it is
 */
public record Picture(Instant asOf, SortedMap<FindingKey, Reading> newest) {

  public Picture {
    Objects.requireNonNull(asOf, "asOf");
    newest = Collections.unmodifiableSortedMap(newest);
    for (var reading : newest.values()) {
      if (reading.takenAt().isAfter(asOf)) {
        throw new IllegalArgumentException(
            reading.code() + " was taken at " + reading.takenAt() + ", after " + asOf);
      }
    }
  }

  /** The newest reading of a finding without site and side, if it is no older than {@code age}. */
  public Optional<Reading> fresh(String code, Duration age) {
    return fresh(FindingKey.of(code), age);
  }

  /** The newest reading of a series, if it is no older than {@code age}. */
  public Optional<Reading> fresh(FindingKey key, Duration age) {
    return Optional.ofNullable(newest.get(key))
        .filter(reading -> !reading.takenAt().plus(age).isBefore(asOf));
  }

  /** The newest readings of a finding at all its sites and sides. */
  public Collection<Reading> all(String code) {
    return newest.values().stream().filter(reading -> reading.code().equals(code)).toList();
  }
}
