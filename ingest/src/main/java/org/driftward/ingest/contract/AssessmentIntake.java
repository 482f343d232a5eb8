package org.driftward.ingest.contract;

import java.util.List;
import java.util.concurrent.CompletionStage;

/** The one door through which assessments and bed moves get in, whatever brought them. */
public interface AssessmentIntake {

  /**
   * Checks and keeps assessments, all or nothing.
   *
   * @param origin who sends, for the {@link Topic#REJECTED} key; never a patient's data
   * @return completes when Kafka has acknowledged every record, with the outcome; completes
   *     exceptionally with {@link UnavailableException} when Kafka does not answer
   */
  CompletionStage<Outcome> accept(String origin, List<Assessment> assessments);

  /** Admits, moves, updates or discharges; the same promise as {@link #accept}. */
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

  /** Nothing was kept; the sender should try again later. */
  final class UnavailableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public UnavailableException(String message, Throwable cause) {
      super(message, cause);
    }
  }
}
