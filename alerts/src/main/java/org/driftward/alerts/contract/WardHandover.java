package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One shift handed a ward to the next.
 *
 * @param sheet the list as it was signed, as plain text
 * @param note of the giver, or null
 * @param receiver account of whoever signed for it, or null until somebody has
 */
public record WardHandover(
    String id,
    String ward,
    Instant givenAt,
    String giver,
    String giverName,
    String sheet,
    @Nullable String note,
    @Nullable String receiver,
    @Nullable String receiverName,
    @Nullable Instant receivedAt) {
  public WardHandover {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(ward, "ward");
    Objects.requireNonNull(givenAt, "givenAt");
    Objects.requireNonNull(giver, "giver");
    Objects.requireNonNull(sheet, "sheet");
    if ((receiver == null) != (receivedAt == null)) {
      throw new IllegalArgumentException("hand-over " + id + " is signed for by halves");
    }
    if (giver.equals(receiver)) {
      throw new IllegalArgumentException("hand-over " + id + " to oneself");
    }
  }

  public WardHandover receivedBy(Actor actor, Instant at) {
    return new WardHandover(
        id, ward, givenAt, giver, giverName, sheet, note, actor.account(), actor.name(), at);
  }

  @Override
  public String toString() {
    return "WardHandover[" + id + "]";
  }
}
