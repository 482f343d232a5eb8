package org.driftward.ingest.contract;

import java.util.List;
import java.util.concurrent.CompletionStage;

/**
 * The one door through which assessments and bed moves get in, whatever brought them. Thread-safe.
 *
 * <p>Every call completes when Kafka has acknowledged every record it leads to, or exceptionally
 * with {@link UnavailableException} when Kafka does not answer; then the sender should repeat the
 * same, which is always safe. What is refused is kept on {@link Topic#REJECTED} before the call
 * completes.
 */
public interface AssessmentIntake {

  /**
   * Checks and keeps assessments, all or nothing: one fault refuses all of them.
   *
   * @return the outcome; pointers of faults count in {@code assessments}, for example {@code
   *     /0/findings/2/unit}
   */
  CompletionStage<Outcome> accept(Received received, List<Assessment> assessments);

  /**
   * Applies a change to the newest known state of its encounter. Changes of one encounter are made
   * one after the other. May block until Kafka answers, so call it from a thread that may wait.
   */
  CompletionStage<Outcome> change(Received received, EncounterChange change);

  /** Keeps an input in which an adapter has found faults itself. */
  CompletionStage<Outcome> refuse(Received received, List<Fault> faults);

  /**
   * {@link #accept(Received, List)} for a sender inside the house; what is refused is kept in the
   * JSON of the topic.
   */
  CompletionStage<Outcome> accept(String origin, List<Assessment> assessments);

  /** Admits, moves, updates or discharges; {@link EncounterChange.Put} from inside the house. */
  CompletionStage<Outcome> put(String origin, Encounter encounter);

  /** What became of a request. */
  sealed interface Outcome {
    record Accepted(List<String> ids) implements Outcome {
      public Accepted {
        ids = List.copyOf(ids);
      }
    }

    record Refused(List<Fault> faults) implements Outcome {
      public Refused {
        faults = List.copyOf(faults);
      }
    }
  }

  /** Nothing was promised; the sender should try again later. */
  final class UnavailableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public UnavailableException(String message, Throwable cause) {
      super(message, cause);
    }
  }
}
