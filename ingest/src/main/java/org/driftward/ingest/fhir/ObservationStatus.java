package org.driftward.ingest.fhir;

import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.Observation;
import org.jspecify.annotations.Nullable;

/** The status of an Observation in our words. */
final class ObservationStatus {

  private ObservationStatus() {}

  /** Null, with a fault in {@code into}, where nobody can tell whether the value holds. */
  static @Nullable Status of(Observation observation, String pointer, Converted into) {
    var status = observation.getStatus();
    if (status != null) {
      switch (status) {
        case FINAL, PRELIMINARY -> {
          return Status.FINAL;
        }
        case AMENDED, CORRECTED -> {
          return Status.AMENDED;
        }
        case ENTEREDINERROR, CANCELLED -> {
          return Status.RETRACTED;
        }
        default -> {}
      }
    }
    into.fault(
        pointer + "/status",
        Rule.UNUSABLE_STATUS,
        "The status must be final, preliminary, amended, corrected, cancelled or entered-in-error");
    return null;
  }
}
