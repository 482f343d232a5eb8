package org.driftward.ingest.kafka;

import java.time.Clock;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletionStage;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Accepted;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Refused;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.Reading;

/**
 * Judges assessments, and hands an outlet what follows: them, or their refusal. As thread-safe as
 * its outlet.
 */
public final class Keeping {

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<Rejection> REJECTION = JsonFormat.of(Rejection.class);

  private final IntakeRules rules;
  private final EncounterDirectory directory;
  private final Tally tally;
  private final Clock clock;
  private final Outlet outlet;

  public Keeping(
      IntakeRules rules, EncounterDirectory directory, Tally tally, Clock clock, Outlet outlet) {
    this.rules = rules;
    this.directory = directory;
    this.tally = tally;
    this.clock = clock;
    this.outlet = outlet;
  }

  public CompletionStage<Outcome> accept(Received received, List<Assessment> assessments) {
    var now = clock.instant();
    var faults = rules.check(Reading.of(assessments), directory.forOneRequest(), now);
    if (!faults.isEmpty()) {
      return refuse(received, faults);
    }
    var origin = received.origin();
    var records =
        assessments.stream()
            .map(
                each ->
                    RecordSender.letter(
                        Topic.ASSESSMENTS, each.encounter(), ASSESSMENT.write(each), now, origin))
            .toList();
    return outlet
        .send(records)
        .thenApply(
            done -> {
              assessments.forEach(each -> tally.accepted(each.source()));
              return new Accepted(assessments.stream().map(Assessment::id).toList());
            });
  }

  public CompletionStage<Outcome> refuse(Received received, List<Fault> faults) {
    var now = clock.instant();
    var origin = received.origin();
    var rejection = Rejection.of(UUID.randomUUID().toString(), received, now, faults);
    return outlet
        .send(
            List.of(
                RecordSender.letter(
                    Topic.REJECTED, origin, REJECTION.write(rejection), now, origin)))
        .thenApply(
            done -> {
              tally.refused(received);
              return new Refused(faults);
            });
  }
}
