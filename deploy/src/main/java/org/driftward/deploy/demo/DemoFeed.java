package org.driftward.deploy.demo;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CarePlanDesk;
import org.driftward.alerts.contract.PlanRequest;
import org.driftward.alerts.contract.PlanRequest.Standing;
import org.driftward.alerts.contract.PlanRequest.Temporary;
import org.driftward.dashboard.contract.Accounts;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.EncounterDirectory;

/**
 * Brings the demo's sets in through the same door as everything else, at the pace of the ward's
 * clock. Owned by one thread.
 */
final class DemoFeed {

  private static final String ORIGIN = "demo";
  private static final int AT_ONCE = 100;

  /** A crash may have lost what was on its way; sending a set again changes nothing. */
  private static final Duration OVERLAP = Duration.ofMinutes(30);

  private static final Actor CLINICIAN =
      new Actor("response", "Yara Lindqvist", Set.of(AccountRole.RESPONSE));

  private static final Temporary NOTHING_THAT_ENDS = new Temporary(List.of(), null, null, null);

  private final List<DemoPatient> patients = DemoHospital.patients();
  private final Path file;
  private final Clock clock;
  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final CarePlanDesk carePlans;
  private final Accounts accounts;
  private DemoProgress progress;

  DemoFeed(
      Path file,
      Clock clock,
      AssessmentIntake intake,
      EncounterDirectory directory,
      CarePlanDesk carePlans,
      Accounts accounts) {
    this.file = file;
    this.clock = clock;
    this.intake = intake;
    this.directory = directory;
    this.carePlans = carePlans;
    this.accounts = accounts;
    var kept = DemoProgress.load(file, clock.instant());
    this.progress = kept.sentUntil(kept.sentUntil().minus(OVERLAP));
  }

  /** Creates the people and fills the beds. Does nothing that is done already. */
  void open() throws InterruptedException {
    DemoAccounts.create(accounts);
    for (var patient : patients) {
      if (directory.find(patient.encounter()).isEmpty()) {
        require(intake.put(ORIGIN, patient.admitted(progress.began())));
      }
      sign(patient);
    }
    progress.save(file);
  }

  /** Sends every set that is due by now. */
  void catchUp() throws InterruptedException {
    var now = clock.instant();
    var due =
        patients.stream()
            .flatMap(
                patient ->
                    patient.assessments(progress.began(), progress.sentUntil(), now).stream())
            .sorted(Comparator.comparing(Assessment::takenAt))
            .toList();
    for (int from = 0; from < due.size(); from += AT_ONCE) {
      require(intake.accept(ORIGIN, due.subList(from, Math.min(due.size(), from + AT_ONCE))));
    }
    if (!due.isEmpty()) {
      progress = progress.sentUntil(now);
      progress.save(file);
    }
  }

  private void sign(DemoPatient patient) {
    var plan = patient.plan();
    if (plan == null || carePlans.find(patient.encounter()).isPresent()) {
      return;
    }
    Instant from = progress.began().minus(Duration.ofHours(37));
    carePlans.sign(
        new PlanRequest(
            patient.encounter(),
            NOTHING_THAT_ENDS,
            new Standing(plan.oxygenScale(), null, null, plan.ceiling(), null, false),
            plan.reason(),
            from,
            null,
            null,
            null),
        CLINICIAN);
  }

  private static void require(CompletionStage<Outcome> answer) throws InterruptedException {
    try {
      var outcome = answer.toCompletableFuture().get(30, TimeUnit.SECONDS);
      if (outcome instanceof Outcome.Refused refused) {
        throw new IllegalStateException("the demo's own data was refused: " + refused.faults());
      }
    } catch (ExecutionException | TimeoutException e) {
      throw new IllegalStateException("intake does not answer yet", e);
    }
  }
}
