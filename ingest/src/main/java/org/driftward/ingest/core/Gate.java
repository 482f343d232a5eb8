package org.driftward.ingest.core;

import java.util.List;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CompletionStage;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Refused;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.WardScope;

/**
 * One of the ways in, taken with bytes that came in before: what was refused is mended and replayed
 * through the very code that refused it. Thread-safe.
 */
public interface Gate {

  /** Whether bytes that were sent to this target, as {@link Received#target()} has it, go here. */
  boolean serves(String target);

  /**
   * Reads, checks and keeps, as if the bytes came in now. Blocks until Kafka has answered.
   *
   * @throws UnavailableException if nothing was promised
   */
  Passage pass(Received received, Bearer bearer);

  /**
   * The same gate in front of another intake: what it lets through is kept elsewhere, and it asks
   * another directory who is where.
   */
  Gate over(AssessmentIntake intake, EncounterDirectory directory);

  /**
   * Who brings the bytes in.
   *
   * @param account signs what names no other author
   * @param sight the wards about which the bytes may speak
   */
  record Bearer(String account, WardScope sight) {}

  /**
   * What became of it.
   *
   * @param kept whether anything was accepted
   * @param faults why it, or a part of it, was refused; empty if all of it was kept
   */
  record Passage(boolean kept, List<Fault> faults) {
    public Passage {
      faults = List.copyOf(faults);
    }

    public static Passage refused(Rule rule, String detail) {
      return new Passage(false, List.of(new Fault("", rule.word(), detail)));
    }

    /**
     * Waits for an outcome.
     *
     * @throws UnavailableException if Kafka does not answer
     */
    public static Passage of(CompletionStage<Outcome> outcome) {
      try {
        return outcome.toCompletableFuture().join() instanceof Refused refused
            ? new Passage(false, refused.faults())
            : new Passage(true, List.of());
      } catch (CompletionException e) {
        if (e.getCause() instanceof UnavailableException unavailable) {
          throw unavailable;
        }
        throw e;
      }
    }
  }
}
