package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A patient was handed over.
 *
 * @param episode the one that ran then, or null
 * @param giver account
 * @param receiver as people know them
 * @param receiverAccount sign-in name, or null of somebody without one; the episode stays where it
 *     is then
 * @param readBack whether the receiver repeated it and the giver confirmed
 */
public record Handover(
    String id,
    String encounter,
    @Nullable String episode,
    Instant at,
    String giver,
    String giverName,
    String receiver,
    @Nullable String receiverAccount,
    HandoverText text,
    boolean readBack) {
  public Handover {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(receiver, "receiver");
    Objects.requireNonNull(text, "text");
  }

  @Override
  public String toString() {
    return "Handover[" + id + "]";
  }
}
