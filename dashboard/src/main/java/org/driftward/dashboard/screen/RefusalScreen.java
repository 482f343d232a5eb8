package org.driftward.dashboard.screen;

import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.IntakeDesk.Refusal;
import org.driftward.ingest.contract.IntakeDesk.Replay;
import org.jspecify.annotations.Nullable;

/**
 * One refusal: the reasons beside the exact bytes, a form to mend them, and what was tried.
 *
 * @param contentType of the bytes
 */
public record RefusalScreen(
    RefusalLine line,
    List<Fault> reasons,
    String contentType,
    BytesView bytes,
    List<Try> tries,
    boolean waiting) {

  /**
   * One replay.
   *
   * @param mended whether other bytes than the original were sent
   * @param done when, or null while it waits
   */
  public record Try(
      Instant at,
      String by,
      boolean mended,
      @Nullable BytesView bytes,
      String state,
      @Nullable Instant done,
      List<Fault> reasons) {

    static Try of(Replay replay, String contentType) {
      var mended = replay.mended();
      return new Try(
          replay.at(),
          replay.by(),
          mended != null,
          mended == null ? null : BytesView.of(mended, contentType),
          IntakeWords.state(replay.state()),
          replay.doneAt(),
          replay.faults());
    }

    @Override
    public String toString() {
      return "Try[" + state + "]";
    }
  }

  public static RefusalScreen of(Refusal refusal) {
    var line = refusal.line();
    var type = line.contentType();
    return new RefusalScreen(
        RefusalLine.of(line),
        line.faults(),
        type,
        BytesView.of(refusal.bytes(), type),
        refusal.replays().stream().map(replay -> Try.of(replay, type)).toList(),
        refusal.replays().stream().anyMatch(replay -> replay.doneAt() == null));
  }

  @Override
  public String toString() {
    return "RefusalScreen[" + line.id() + "]";
  }
}
