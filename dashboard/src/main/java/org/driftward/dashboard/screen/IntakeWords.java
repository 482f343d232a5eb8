package org.driftward.dashboard.screen;

import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.IntakeDesk.State;

/** How the intake page names things. */
final class IntakeWords {

  private IntakeWords() {}

  static String way(Source source) {
    return switch (source) {
      case BEDSIDE -> "JSON";
      case HL7 -> "HL7 v2";
      case FHIR -> "FHIR";
      case FILE -> "file";
      case MONITOR -> "monitor";
    };
  }

  static String state(State state) {
    return switch (state) {
      case OPEN -> "refused";
      case WAITING -> "replay waiting";
      case ACCEPTED -> "accepted at last";
      case PARTLY -> "accepted in part";
      case REFUSED -> "refused again";
    };
  }
}
