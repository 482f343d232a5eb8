package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Shift;

/**
 * Everything of a ward that goes on paper: when a shift hands over, and for when the system is
 * down.
 *
 * @param patients everybody on the ward, by bed
 * @param began when the shift that hands over began
 * @param calls of the response team since then, newest first
 */
public record WardPaper(
    Board board,
    List<PatientView> patients,
    List<PatientHistory> histories,
    List<Shift> onDuty,
    Instant began,
    List<Call> calls,
    List<Feed> feeds) {
  public WardPaper {
    Objects.requireNonNull(board, "board");
    patients = List.copyOf(patients);
    histories = List.copyOf(histories);
    onDuty = List.copyOf(onDuty);
    calls = List.copyOf(calls);
    feeds = List.copyOf(feeds);
    if (histories.size() != patients.size()) {
      throw new IllegalArgumentException(
          histories.size() + " histories for " + patients.size() + " patients");
    }
  }

  @Override
  public String toString() {
    return "WardPaper[" + board.ward() + "]";
  }
}
