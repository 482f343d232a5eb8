package org.driftward.scoring.core.timeline;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.score.History;
import org.driftward.scoring.core.score.Output;
import org.driftward.scoring.core.score.ScoreBook;

/** Remembers the readings that some score adds up over hours, for as long as it needs them. */
final class Sums {

  private final Map<String, Duration> reach = new HashMap<>();

  Sums(ScoreBook book, ScoringPolicy policy) {
    for (var definition : book.definitions()) {
      for (var input : definition.inputs()) {
        if (input.measure() instanceof Output output) {
          // A record begins with a volume at least "over" old, and may end one validity ago.
          var slack = policy.validity(output.volume().finding()).multipliedBy(2);
          for (var source : output.remembered()) {
            reach.merge(source.finding(), output.over().plus(slack), Sums::longer);
          }
        }
      }
    }
  }

  SortedMap<String, List<Reading>> next(
      SortedMap<String, List<Reading>> before, List<Reading> taken, Instant asOf) {
    if (reach.isEmpty()) {
      return before;
    }
    SortedMap<String, List<Reading>> after = before;
    for (var reading : taken) {
      var kept = reach.get(reading.code());
      if (kept != null && reading.key().equals(FindingKey.of(reading.code()))) {
        after = after == before ? new TreeMap<>(before) : after;
        var oldest = asOf.minus(kept);
        var readings = new ArrayList<Reading>();
        for (var earlier : before.getOrDefault(reading.code(), List.of())) {
          if (!earlier.takenAt().isBefore(oldest)) {
            readings.add(earlier);
          }
        }
        readings.add(reading);
        after.put(reading.code(), List.copyOf(readings));
      }
    }
    return after;
  }

  History history(SortedMap<String, List<Reading>> sums) {
    return (code, from) ->
        sums.getOrDefault(code, List.of()).stream()
            .filter(reading -> !reading.takenAt().isBefore(from))
            .toList();
  }

  private static Duration longer(Duration one, Duration other) {
    return one.compareTo(other) >= 0 ? one : other;
  }
}
