package org.driftward.scoring.core;

import java.time.Instant;
import java.util.Collections;
import java.util.Objects;
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
}
