package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MultivaluedMap;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletionException;
import org.driftward.dashboard.core.StayRecord;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.screen.entry.EnteredForm;
import org.driftward.dashboard.screen.entry.OneTouch;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Refused;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.jspecify.annotations.Nullable;

/**
 * Takes plain forms of the entry page to intake: a new assessment, a correction, a retraction.
 * Blocking; sending the same form twice makes nothing twice, since the form carries the id.
 */
@ApplicationScoped
class Scribe {

  private static final Written AWAY =
      new Written(
          503,
          "Not recorded",
          "Nothing was kept: the system behind this page does not answer. Go back and send it"
              + " again, or write it on paper.");

  private final AssessmentIntake intake;
  private final Catalogue catalogue;
  private final Clock clock;

  Scribe(AssessmentIntake intake, Catalogue catalogue, Clock clock) {
    this.intake = intake;
    this.catalogue = catalogue;
    this.clock = clock;
  }

  /** What became of it, in words. */
  record Written(int status, String title, String words) {
    static Written refused(String words) {
      return new Written(
          422, "Not recorded", "Nothing was kept: " + words + " Go back to mend it.");
    }

    static Written overtaken() {
      return new Written(
          409,
          "Not recorded",
          "Nothing was kept: somebody has changed this assessment since your page was loaded."
              + " Look at it again first.");
    }
  }

  Written record(StayRecord record, MultivaluedMap<String, String> form, String account) {
    var now = clock.instant();
    var id = form.getFirst("assessment");
    var earlier = id == null ? null : record.find(id).orElse(null);
    boolean correction = form.getFirst("reason") != null;
    if (id == null || id.isBlank()) {
      return Written.refused("the form is incomplete.");
    }
    if (correction && (earlier == null || earlier.retracted())) {
      return Written.overtaken();
    }
    int revision = correction && earlier != null ? earlier.revision() + 1 : 1;
    if (correction && !String.valueOf(revision).equals(form.getFirst("revision"))) {
      return Written.overtaken();
    }
    var entered =
        EnteredForm.read(
            catalogue,
            first(form),
            form.getOrDefault("expected", List.of()),
            OneTouch.of(catalogue, record));
    if (!entered.problems().isEmpty()) {
      return Written.refused(String.join("; ", entered.problems()) + ".");
    }
    if (entered.findings().isEmpty()) {
      return Written.refused("no finding was entered.");
    }
    Instant takenAt;
    try {
      takenAt =
          takenAt(form.getFirst("at"), correction && earlier != null ? earlier.takenAt() : now);
    } catch (DateTimeException e) {
      return Written.refused("the time it was taken at is not a time.");
    }
    var reason = FormField.words(form.getFirst("reason"));
    if (correction && reason == null) {
      return Written.refused("say why it is corrected.");
    }
    return sent(
        assessment(
            record,
            id,
            revision,
            correction ? Status.AMENDED : Status.FINAL,
            takenAt,
            account,
            reason,
            entered.findings()),
        account);
  }

  /** What was found stays with the retraction, so that it can be shown struck through. */
  Written retract(StayRecord record, MultivaluedMap<String, String> form, String account) {
    var id = form.getFirst("assessment");
    var earlier = id == null ? null : record.find(id).orElse(null);
    var reason = FormField.words(form.getFirst("reason"));
    if (reason == null) {
      return Written.refused("say why it is retracted.");
    }
    if (earlier == null
        || earlier.retracted()
        || !String.valueOf(earlier.revision() + 1).equals(form.getFirst("revision"))) {
      return Written.overtaken();
    }
    return sent(
        assessment(
            record,
            earlier.id(),
            earlier.revision() + 1,
            Status.RETRACTED,
            earlier.takenAt(),
            account,
            reason,
            earlier.findings()),
        account);
  }

  private Assessment assessment(
      StayRecord record,
      String id,
      int revision,
      Status status,
      Instant takenAt,
      String account,
      @Nullable String reason,
      List<Finding> findings) {
    var encounter = record.view().encounter();
    return new Assessment(
        id,
        revision,
        status,
        encounter.id(),
        encounter.patient().id(),
        takenAt,
        clock.instant(),
        Source.BEDSIDE,
        account,
        reason,
        findings);
  }

  private Written sent(Assessment assessment, String account) {
    try {
      var outcome = intake.accept(account, List.of(assessment)).toCompletableFuture().join();
      return outcome instanceof Refused refused
          ? Written.refused(
              String.join("; ", refused.faults().stream().map(Fault::detail).toList()) + ".")
          : kept(assessment);
    } catch (CompletionException | UnavailableException e) {
      return AWAY;
    }
  }

  private Written kept(Assessment assessment) {
    var taken = Wording.time(assessment.takenAt(), clock.instant(), clock.getZone());
    return assessment.retracted()
        ? new Written(
            200, "Retracted", "It counts no more, and stays in the record, struck through.")
        : new Written(
            200,
            "Recorded",
            "%s, taken %s. The patient's page shows them in a moment."
                .formatted(
                    Wording.count(assessment.findings().size(), "finding", "findings"), taken));
  }

  /** Local time as a browser's field writes it, or the usual time where that is empty. */
  private Instant takenAt(@Nullable String local, Instant otherwise) {
    return local == null || local.isBlank()
        ? otherwise
        : LocalDateTime.parse(local).atZone(clock.getZone()).toInstant();
  }

  private static Map<String, String> first(MultivaluedMap<String, String> form) {
    var fields = new HashMap<String, String>();
    form.forEach((name, values) -> fields.put(name, values.get(0)));
    return fields;
  }
}
