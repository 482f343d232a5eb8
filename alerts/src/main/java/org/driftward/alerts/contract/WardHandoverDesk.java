package org.driftward.alerts.contract;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where shifts sign for a ward: the giver, then the receiver. Thread-safe, blocking. */
public interface WardHandoverDesk {

  /** What became of it. */
  sealed interface Answer {
    record Done(WardHandover handover) implements Answer {}

    record Incomplete(String field, String why) implements Answer {}

    record NotAllowed(String why) implements Answer {}

    record NoLongerApplies(WardHandover handover, String why) implements Answer {}

    record Unknown() implements Answer {}
  }

  /**
   * @param sheet the list as the giver saw it, as plain text
   */
  Answer give(String ward, String sheet, @Nullable String note, Actor giver);

  /** Signs for it; the giver cannot. */
  Answer receive(String handover, Actor receiver);

  Optional<WardHandover> find(String handover);

  /** The newest ones, newest first. */
  List<WardHandover> recent(String ward, int limit);
}
