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
 * @param why the last attempt failed, or nothing was sent, in words that name no address; or null
 * @param next when it is tried again, or null where it is settled
 */
public record Delivery(
    long notice,
    int rung,
    Channel channel,
    String recipient,
    State state,
    int attempts,
    Instant at,
    @Nullable String why,
    @Nullable Instant next) {

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

  /** One that is settled. */
  public Delivery(
      long notice,
      int rung,
      Channel channel,
      String recipient,
      State state,
      int attempts,
      Instant at,
      @Nullable String why) {
    this(notice, rung, channel, recipient, state, attempts, at, why, null);
  }
}
