package org.driftward.ingest.hl7;

import java.util.Optional;
import org.driftward.ingest.contract.Assessment;

/** What OBX-11, HL7 table 0085, means for us. */
enum ResultStatus {
  /** Final, and what is shown to people before it is: preliminary, partial, not verified. */
  HOLDS(1),
  CORRECTED(2),
  WITHDRAWN(3),
  /** There is no result: not asked for, not obtained, not yet measured. */
  NO_RESULT(0);

  private final int order;

  ResultStatus(int order) {
    this.order = order;
  }

  int order() {
    return order;
  }

  Assessment.Status assessment() {
    return switch (this) {
      case CORRECTED -> Assessment.Status.AMENDED;
      case WITHDRAWN -> Assessment.Status.RETRACTED;
      default -> Assessment.Status.FINAL;
    };
  }

  /** Empty for a letter from which nobody can tell whether the value holds. */
  static Optional<ResultStatus> of(String letter) {
    return switch (letter) {
      case "F", "P", "R", "S", "U" -> Optional.of(HOLDS);
      case "C" -> Optional.of(CORRECTED);
      case "D", "W" -> Optional.of(WITHDRAWN);
      case "I", "N", "O", "X" -> Optional.of(NO_RESULT);
      default -> Optional.empty();
    };
  }
}
