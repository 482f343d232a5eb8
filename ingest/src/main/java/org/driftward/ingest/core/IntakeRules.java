package org.driftward.ingest.core;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Fault;

/**
 * Everything that an assessment must satisfy before it is kept. Answers with every fault, not the
 * first. Immutable, thread-safe.
 *
 * <p>The same assessment sent twice is no fault: a sender that did not hear the answer repeats, and
 * readers keep one of equal revisions. Whether two records of the same revision differ cannot be
 * known here; readers then keep the one that Kafka holds first.
 */
public final class IntakeRules {

  private final FindingRules findingRules;
  private final StayRules stayRules;

  public IntakeRules(Catalogue catalogue, IntakeLimits limits) {
    this.findingRules = new FindingRules(catalogue);
    this.stayRules = new StayRules(limits);
  }

  /**
   * @param directory who is where now
   * @return every fault, those of reading included, assessment by assessment; empty if it may be
   *     kept
   */
  public List<Fault> check(
      Reading reading, Function<String, Optional<Encounter>> directory, Instant now) {
    var faults = new Faults();
    reading.faults().forEach(faults::add);
    var seen = new HashMap<Revision, String>();
    for (var draft : reading.drafts()) {
      draft.faults().forEach(faults::add);
      checkRepeated(draft, seen, faults);
      checkLife(draft, faults);
      stayRules.checkTimes(draft, now, faults);
      checkStay(draft, directory, faults);
      draft.findings().forEach(placed -> findingRules.check(placed, faults));
      SetRules.check(draft.findings(), faults);
    }
    return faults.list();
  }

  private record Revision(String id, int revision) {}

  private static void checkRepeated(Draft draft, Map<Revision, String> seen, Faults faults) {
    if (draft.id() == null || draft.revision() == null) {
      return;
    }
    var first = seen.putIfAbsent(new Revision(draft.id(), draft.revision()), draft.pointer());
    if (first != null) {
      faults.add(
          draft.pointer() + "/id",
          Rule.DUPLICATE_ASSESSMENT,
          "the same assessment and revision as " + first);
    }
  }

  /** A correction or retraction is a later revision, and says why. */
  private static void checkLife(Draft draft, Faults faults) {
    var revision = draft.revision();
    var status = draft.status();
    boolean later = status == Status.AMENDED || status == Status.RETRACTED;
    if (revision != null && revision < (later ? 2 : 1)) {
      faults.add(
          draft.pointer() + "/revision",
          Rule.REVISION_TOO_LOW,
          later
              ? "what is " + status.word() + " was sent before; its revision is 2 or more"
              : "revision " + revision + " is below 1");
    }
    if (later && draft.reason() == null) {
      faults.add(draft.pointer() + "/reason", Rule.NO_REASON, "say why it was " + status.word());
    }
    if (status != Status.RETRACTED && draft.findings().isEmpty() && draft.faults().isEmpty()) {
      faults.add(draft.pointer() + "/findings", Rule.NO_FINDINGS, "an assessment without findings");
    }
  }

  private void checkStay(
      Draft draft, Function<String, Optional<Encounter>> directory, Faults faults) {
    var id = draft.encounter();
    if (id == null) {
      return;
    }
    var encounter = directory.apply(id);
    if (encounter.isPresent()) {
      stayRules.checkEncounter(draft, encounter.get(), faults);
    } else {
      faults.add(
          draft.pointer() + "/encounter",
          Rule.UNKNOWN_ENCOUNTER,
          "encounter " + id + " is not known; admit the patient first");
    }
  }
}
