package org.driftward.alerts.contract;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where patients are handed over with a structured text. Thread-safe, blocking. */
public interface HandoverDesk {

  /**
   * @param receiver as people know them
   * @param receiverAccount sign-in name of whoever takes the running episode over, or null
   * @param text as the giver left it; assessment and recommendation must not be blank
   */
  record Giving(
      String encounter,
      String receiver,
      @Nullable String receiverAccount,
      HandoverText text,
      boolean readBack) {}

  /** What became of it. */
  sealed interface Answer {
    record Done(Handover handover) implements Answer {}

    record Incomplete(String field, String why) implements Answer {}

    record NotAllowed(String why) implements Answer {}

    /** The episode cannot be handed over as it stands; nothing was kept. */
    record NoLongerApplies(String why) implements Answer {}

    record Unknown() implements Answer {}
  }

  /**
   * The text as the record fills it in. The assessment is left to the person; the recommendation is
   * what the policy asks for and says that it is a draft.
   */
  Optional<HandoverText> draft(String encounter, Actor giver);

  /** Durable when it returns: the text, the change of owner and their journal entries together. */
  Answer give(Giving giving, Actor giver);

  /** Newest first. */
  List<Handover> of(String encounter);
}
