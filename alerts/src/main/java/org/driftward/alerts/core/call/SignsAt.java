package org.driftward.alerts.core.call;

import java.util.List;
import org.driftward.alerts.contract.Call.Point;
import org.driftward.alerts.contract.Call.Sign;
import org.driftward.alerts.contract.Call.Signs;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;

/** Reads the vital signs off a picture of the patient. */
public final class SignsAt {

  private SignsAt() {}

  public static Signs of(Point point, Snapshot picture) {
    var score = picture.leading();
    return score == null
        ? new Signs(point, picture.asOf(), "no score", List.of())
        : new Signs(point, picture.asOf(), words(score), values(score));
  }

  /** A partial set is never one number. */
  private static String words(Score score) {
    var low = score.low().toPlainString();
    return score.complete()
        ? score.title() + " " + low
        : score.title() + " " + low + " to " + score.high().toPlainString() + ", incomplete";
  }

  private static List<Sign> values(Score score) {
    return score.inputs().stream()
        .map(
            input ->
                new Sign(
                    input.code(),
                    input.value().number(),
                    input.value().word(),
                    input.unit(),
                    input.takenAt(),
                    input.points()))
        .toList();
  }
}
