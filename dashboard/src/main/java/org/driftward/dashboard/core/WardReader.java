package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.WardScope;

/**
 * Reads what people see. Judges lateness by the clock of the ward. It does not ask whether the
 * reader may see it: the edge does. Thread-safe, blocking.
 */
public interface WardReader {

  /**
   * A ward in the list.
   *
   * @param patients on it now
   * @param unanswered episodes there that nobody has answered
   */
  record WardLine(String ward, int patients, int unanswered) {}

  /** The wards in the scope that have patients, by name; assigned ones without patients too. */
  List<WardLine> wards(WardScope scope);

  /** The ward as it is; without cards where nobody lies there. */
  Board board(String ward);

  /** Empty where the encounter is unknown; discharged ones are found. */
  Optional<PatientView> patient(String encounter);

  /**
   * @param from inclusive
   * @param to exclusive
   */
  PatientHistory history(String encounter, Instant from, Instant to);

  /** Every patient in the scope with a running episode, most concerning first over all wards. */
  List<Card> responseQueue(WardScope scope);
}
