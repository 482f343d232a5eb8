package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.Objects;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * How one alarm reached one recipient by one channel.
 *
 * @param notice sequence of the journal entry that it tells of
 * @param rung of the ladder, from 0
 * @param recipient who, as the hospital's policy names them; never an address
 * @param attempts made so far
 * @param at when it came to stand so, wall clock
 * @param why in words, or null where there is nothing to say
 */
public record Delivery(
    long notice,
    int rung,
    Channel channel,
    String recipient,
    State state,
    int attempts,
    Instant at,
    @Nullable String why) {

  /** Where a delivery stands. */
  public enum State implements Word {
    /** Will be sent as soon as somebody has a hand free. */
    WAITING,
    /** The last attempt failed; another follows. */
    FAILED,
    /** The receiving server has taken it. Whether somebody read it, only an answer tells. */
    DELIVERED,
    /** It cannot arrive any more in time; the ladder has been told. */
    GIVEN_UP,
    /** Never tried: the channel is not configured, or nobody has an address. */
    NOT_SENT,
    /** Somebody answered before it went out. */
    WITHDRAWN
  }

  public Delivery {
    Objects.requireNonNull(channel, "channel");
    Objects.requireNonNull(recipient, "recipient");
    Objects.requireNonNull(state, "state");
    Objects.requireNonNull(at, "at");
  }
}
