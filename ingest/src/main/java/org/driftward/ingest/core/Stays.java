package org.driftward.ingest.core;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Stay;
import org.jspecify.annotations.Nullable;

/** What becomes of the stays of an encounter when the patient moves. */
final class Stays {

  private Stays() {}

  /**
   * The patient is known to be here now. Stays follow one another: a move told late begins no
   * earlier than the stay before it.
   */
  static List<Stay> moved(List<Stay> stays, String ward, @Nullable String bed, Instant since) {
    var current = last(stays);
    if (isAt(current, ward, bed)) {
      return stays;
    }
    var next = new ArrayList<>(stays);
    next.add(new Stay(ward, bed, later(since, current.from())));
    return next;
  }

  /**
   * The patient came here at that time, and may have moved on since. A repetition changes nothing.
   */
  static List<Stay> inserted(List<Stay> stays, Stay stay) {
    if (!stay.from().isBefore(last(stays).from())) {
      return moved(stays, stay.ward(), stay.bed(), stay.from());
    }
    if (stays.contains(stay) || stay.from().isBefore(stays.get(0).from())) {
      return stays;
    }
    var next = new ArrayList<>(stays);
    next.add(stay);
    next.sort(Comparator.comparing(Stay::from));
    return next;
  }

  /** The last move was none: the patient is where {@code ward} and {@code bed} say. */
  static List<Stay> takenBack(List<Stay> stays, String ward, @Nullable String bed, Instant at) {
    int size = stays.size();
    boolean before = size > 1 && isAt(stays.get(size - 2), ward, bed);
    return before && !isAt(last(stays), ward, bed)
        ? stays.subList(0, size - 1)
        : moved(stays, ward, bed, at);
  }

  private static boolean isAt(Stay stay, String ward, @Nullable String bed) {
    return stay.ward().equals(ward) && Objects.equals(stay.bed(), bed);
  }

  private static Stay last(List<Stay> stays) {
    return stays.get(stays.size() - 1);
  }

  private static Instant later(Instant one, Instant other) {
    return one.isBefore(other) ? other : one;
  }
}
