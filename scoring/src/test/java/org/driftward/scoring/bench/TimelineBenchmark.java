package org.driftward.scoring.bench;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.core.timeline.Editions;
import org.driftward.scoring.core.timeline.Entry;
import org.driftward.scoring.core.timeline.Facts;
import org.driftward.scoring.core.timeline.Head;
import org.driftward.scoring.core.timeline.Judge;
import org.driftward.scoring.core.timeline.MemoryEntries;
import org.driftward.scoring.core.timeline.Outcome;
import org.driftward.scoring.core.timeline.Standing;
import org.driftward.scoring.core.timeline.Timeline;
import org.driftward.scoring.definition.ScoreBooks;
import org.driftward.scoring.policy.PolicyFile;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * One full set of vital signs of an adult, into a history of hourly sets: every shipped score that
 * applies, drift, trend, changed findings and the next due time.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(2)
public class TimelineBenchmark {

  private static final Instant START = Instant.parse("2026-01-05T06:00:00Z");
  private static final int HOUR = 3600;

  /** Sets in the history. */
  @Param({"100", "1000", "10000"})
  public int sets;

  private final Random random = new Random(5);
  private final MemoryEntries entries = new MemoryEntries();
  private Timeline timeline;
  private Standing standing;
  private Entry next;

  @Setup
  public void fillHistory() {
    var catalogue = Catalogue.shipped();
    var judge = new Judge(catalogue, ScoreBooks.shipped(catalogue), PolicyFile.shipped());
    timeline = new Timeline(Editions.only(judge));
    standing = new Standing("V-1", Facts.NONE, Head.EMPTY, 0);
    keep(timeline.take(standing, entries, adult(), null));
    for (int i = 0; i < sets; i++) {
      keep(timeline.take(standing, entries, entry(i), null));
    }
    next = entry(sets);
  }

  private void keep(Outcome outcome) {
    entries.keep(outcome);
    standing = outcome.standing();
  }

  /** The same newest set again and again; the outcome is not kept. */
  @Benchmark
  public Outcome newest() {
    return timeline.take(standing, entries, next, null);
  }

  private static Encounter adult() {
    var stay = new Stay("north", "1", START);
    var patient = new Patient("P-1", null, LocalDate.of(1960, 5, 1), null);
    return new Encounter("V-1", patient, List.of(stay), START, null, null, 1);
  }

  private Entry entry(int hour) {
    var takenAt = START.plusSeconds((long) hour * HOUR);
    return Entry.of(
        new Assessment(
            "A-" + hour,
            1,
            Status.FINAL,
            "V-1",
            "P-1",
            takenAt,
            takenAt,
            Source.BEDSIDE,
            "n-1",
            null,
            findings()));
  }

  private List<Finding> findings() {
    var findings = new ArrayList<Finding>();
    findings.add(quantity("respiratory-rate", 14 + random.nextInt(6), "/min"));
    findings.add(quantity("oxygen-saturation", 94 + random.nextInt(6), "%"));
    findings.add(Finding.coded("inspired-oxygen", "air"));
    findings.add(quantity("systolic-pressure", 110 + random.nextInt(30), "mm[Hg]"));
    findings.add(quantity("diastolic-pressure", 60 + random.nextInt(20), "mm[Hg]"));
    findings.add(quantity("heart-rate", 65 + random.nextInt(30), "/min"));
    findings.add(Finding.coded("consciousness", "alert"));
    findings.add(Finding.quantity("temperature", "36." + random.nextInt(10), "Cel"));
    return findings;
  }

  private static Finding quantity(String code, int value, String unit) {
    return Finding.quantity(code, Integer.toString(value), unit);
  }

  public static void main(String[] args) throws RunnerException {
    new Runner(new OptionsBuilder().include(TimelineBenchmark.class.getName()).build()).run();
  }
}
