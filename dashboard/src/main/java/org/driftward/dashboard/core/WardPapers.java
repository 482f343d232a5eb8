package org.driftward.dashboard.core;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.CallDesk;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.ShiftDesk;

/** Gathers what goes on paper of a ward. Thread-safe, blocking. */
public final class WardPapers {

  /** Where nobody is in charge, a shift is taken to have begun so long ago. Common practice. */
  private static final Duration USUAL_SHIFT = Duration.ofHours(12);

  private static final Duration LAST_SETS = Duration.ofHours(24);

  private final WardReader reader;
  private final FeedReader feeds;
  private final ShiftDesk shifts;
  private final CallDesk calls;

  public WardPapers(WardReader reader, FeedReader feeds, ShiftDesk shifts, CallDesk calls) {
    this.reader = reader;
    this.feeds = feeds;
    this.shifts = shifts;
    this.calls = calls;
  }

  public WardPaper of(String ward) {
    var board = reader.board(ward);
    var now = board.asOf();
    var patients =
        board.cards().stream()
            .sorted(Comparator.comparing(Card::bed, Comparator.nullsLast(BedOrder.INSTANCE)))
            .map(card -> reader.patient(card.encounter()))
            .flatMap(Optional::stream)
            .toList();
    var histories =
        patients.stream()
            .map(
                view ->
                    reader.history(view.encounter().id(), now.minus(LAST_SETS), now.plusMillis(1)))
            .toList();
    var onDuty = shifts.running(ward);
    var began = began(onDuty, now);
    return new WardPaper(
        board,
        patients,
        histories,
        onDuty,
        began,
        calls.list(Set.of(ward), began, now.plusMillis(1)),
        feeds.feeds(ward, now.minus(LAST_SETS)));
  }

  private static Instant began(List<Shift> onDuty, Instant now) {
    return onDuty.stream()
        .filter(shift -> shift.duty() == Duty.CHARGE)
        .map(Shift::from)
        .findFirst()
        .orElse(now.minus(USUAL_SHIFT));
  }
}
