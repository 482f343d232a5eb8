package org.driftward.scoring.rescore;

import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import java.util.TreeSet;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.core.compare.Comparison;
import org.driftward.scoring.core.timeline.Editions;
import org.driftward.scoring.core.timeline.Recount;
import org.jspecify.annotations.Nullable;

/**
 * Reads the log once and compares two judgements of every encounter. Facts of all encounters are in
 * memory at the same time, assessments of one partition; those of merged encounters, which may
 * count in another partition, come first and stay.
 */
final class LogRecount {

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);
  private static final JsonFormat<CarePlan> CARE_PLAN = JsonFormat.of(CarePlan.class);

  private final LogReader log;
  private final Editions inForce;
  private final Editions candidate;
  private final Tally tally;
  private final Report report;
  private final Recount recount = new Recount();
  private final Set<String> compared = new HashSet<>();

  LogRecount(LogReader log, Editions inForce, Editions candidate, Tally tally, Report report) {
    this.log = log;
    this.inForce = inForce;
    this.candidate = candidate;
    this.tally = tally;
    this.report = report;
  }

  void run() throws IOException, InterruptedException {
    var withMerged = new TreeSet<Integer>();
    for (int at = 0; at < log.partitions(Topic.ENCOUNTERS); at++) {
      int partition = at;
      log.read(
          Topic.ENCOUNTERS,
          at,
          received -> {
            var encounter = read(ENCOUNTER, received);
            if (encounter != null && isOwn(received, encounter.id())) {
              recount.take(encounter);
              if (encounter.mergedInto() != null) {
                withMerged.add(partition);
              }
            }
          });
    }
    for (int at = 0; at < log.partitions(Topic.CARE_PLANS); at++) {
      log.read(
          Topic.CARE_PLANS,
          at,
          received -> {
            var plan = read(CARE_PLAN, received);
            if (plan != null && isOwn(received, plan.encounter())) {
              recount.take(plan);
            }
          });
    }
    for (int at : withMerged) {
      takeAssessments(at, true);
    }
    for (int at = 0; at < log.partitions(Topic.ASSESSMENTS); at++) {
      takeAssessments(at, false);
      compareAll(recount.withAssessments());
    }
    // Survivors without assessments of their own are left.
    compareAll(recount.encounters());
  }

  private void takeAssessments(int partition, boolean ofMerged) throws InterruptedException {
    log.read(
        Topic.ASSESSMENTS,
        partition,
        received -> {
          var assessment = read(ASSESSMENT, received);
          if (assessment != null
              && isOwn(received, assessment.encounter())
              && recount.isMerged(assessment.encounter()) == ofMerged) {
            recount.take(assessment);
          }
        });
  }

  private void compareAll(Set<String> encounters) throws IOException, InterruptedException {
    for (var encounter : encounters) {
      if (!recount.isMerged(encounter) && compared.add(encounter)) {
        if (Thread.interrupted()) {
          throw new InterruptedException("re-scoring was stopped");
        }
        compare(encounter);
        recount.forget(encounter);
      }
    }
  }

  private void compare(String encounter) throws IOException {
    var before = recount.snapshots(encounter, inForce);
    var after = recount.snapshots(encounter, candidate);
    long differing = 0;
    for (int i = 0; i < before.size(); i++) {
      var differences = Comparison.of(before.get(i), after.get(i));
      differing += differences.isEmpty() ? 0 : 1;
      for (var difference : differences) {
        tally.differs(difference);
        report.add(difference);
      }
    }
    tally.compared(encounter, before.size(), differing, recount.plansMissing(encounter) > 0);
  }

  private <T> @Nullable T read(JsonFormat<T> format, ConsumerRecord<String, byte[]> received) {
    tally.read();
    if (received.key() == null || received.value() == null) {
      tally.unreadable();
      return null;
    }
    try {
      return format.read(received.value());
    } catch (MalformedException e) {
      tally.unreadable();
      return null;
    }
  }

  private boolean isOwn(ConsumerRecord<String, byte[]> received, String encounter) {
    if (received.key().equals(encounter)) {
      return true;
    }
    tally.unreadable();
    return false;
  }
}
