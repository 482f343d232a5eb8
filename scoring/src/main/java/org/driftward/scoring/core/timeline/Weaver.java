package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.change.Ahead;
import org.driftward.scoring.core.change.ChangeDetector;
import org.driftward.scoring.core.change.SeriesDetector;
import org.driftward.scoring.core.change.SeriesState;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.driftward.scoring.core.score.Subject;
import org.driftward.scoring.core.score.Thresholds;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the strands of a head going: each reading lengthens one, a documented change restarts all.
 */
final class Weaver {

  private final Restarts restarts;
  private final ChangeDetector detector;
  private final Thresholds thresholds;

  Weaver(ScoringPolicy policy, ChangeDetector detector, Thresholds thresholds) {
    this.restarts = new Restarts(policy.restarts());
    this.detector = detector;
    this.thresholds = thresholds;
  }

  /** The strands after one more assessment. */
  SortedMap<FindingKey, Strand> next(
      Head before, List<Reading> taken, Facts facts, Subject subject, Instant asOf) {
    var strands = restarted(before, facts, asOf);
    for (var reading : taken) {
      lengthen(strands, reading, subject);
    }
    for (var reading : detector.derived(taken)) {
      lengthen(strands, reading, subject);
    }
    return strands;
  }

  private void lengthen(SortedMap<FindingKey, Strand> strands, Reading reading, Subject subject) {
    strands.compute(
        reading.key(), (key, strand) -> longer(strand, reading, ahead(reading, subject)));
  }

  private Ahead ahead(Reading reading, Subject subject) {
    return up -> thresholds.around(reading, subject).next(up);
  }

  /** One series with one more reading. */
  Strand longer(@Nullable Strand strand, Reading reading, Ahead ahead) {
    var series = detector.series(reading);
    var before = strand == null ? SeriesState.empty() : strand.state();
    return strand(series, reading, series.advance(before, reading), ahead);
  }

  /** What a state says of its newest reading. */
  Strand revived(Strand bare, Subject subject) {
    return strand(bare.newest(), bare.state(), ahead(bare.newest(), subject));
  }

  Strand strand(Reading newest, SeriesState state, Ahead ahead) {
    return strand(detector.series(newest), newest, state, ahead);
  }

  private static Strand strand(
      SeriesDetector series, Reading newest, SeriesState state, Ahead ahead) {
    return new Strand(
        newest,
        state,
        series.drift(state, newest).orElse(null),
        series.changed(state, newest).orElse(null),
        series.trend(state, newest, ahead).orElse(null));
  }

  private SortedMap<FindingKey, Strand> restarted(Head before, Facts facts, Instant asOf) {
    var strands = new TreeMap<>(before.strands());
    var restart = before.at() == null ? null : restarts.last(facts, before.at().takenAt(), asOf);
    if (restart != null) {
      strands.replaceAll((key, strand) -> restarted(strand, restart));
    }
    return strands;
  }

  /** Without a baseline there is no drift and no change; the trend goes on. */
  private static Strand restarted(Strand strand, Instant at) {
    return new Strand(strand.newest(), strand.state().restarted(at), null, null, strand.trend());
  }
}
