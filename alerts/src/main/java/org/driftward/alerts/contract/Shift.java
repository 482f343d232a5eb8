package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.Objects;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * One person's time on duty.
 *
 * @param ward or {@link #EVERY_WARD} for a response team or somebody on call
 * @param account sign-in name
 * @param name as people know them
 * @param beds that the person looks after; only for {@link Duty#BEDSIDE}, and may be empty
 * @param from wall clock
 * @param until planned end; the duty ends by itself then
 * @param ended when it really ended, or null while the person is on duty
 * @param successor the shift that took over from this one, or null
 * @param contact how the person is told of alarms beyond the board while on duty, or null for the
 *     way that the policy names
 */
public record Shift(
    String id,
    String ward,
    Duty duty,
    String account,
    String name,
    Set<String> beds,
    Instant from,
    Instant until,
    @Nullable Instant ended,
    @Nullable String successor,
    @Nullable Contact contact) {

  /** In place of a ward: all of them. */
  public static final String EVERY_WARD = "*";

  public Shift {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(ward, "ward");
    Objects.requireNonNull(duty, "duty");
    Objects.requireNonNull(account, "account");
    Objects.requireNonNull(name, "name");
    beds = beds == null ? Set.of() : Set.copyOf(beds);
    if (!from.isBefore(until)) {
      throw new IllegalArgumentException("a shift that ends before it begins");
    }
    if (!beds.isEmpty() && duty != Duty.BEDSIDE) {
      throw new IllegalArgumentException("beds are for a bedside duty, not " + duty.word());
    }
    boolean everywhere = duty == Duty.RESPONSE || duty == Duty.ON_CALL;
    if (ward.equals(EVERY_WARD) && !everywhere) {
      throw new IllegalArgumentException("a " + duty.word() + " duty is on one ward");
    }
  }

  /** Somebody who is told in the way that the policy names. */
  public Shift(
      String id,
      String ward,
      Duty duty,
      String account,
      String name,
      Set<String> beds,
      Instant from,
      Instant until,
      @Nullable Instant ended,
      @Nullable String successor) {
    this(id, ward, duty, account, name, beds, from, until, ended, successor, null);
  }

  public boolean running() {
    return ended == null;
  }

  public boolean on(String otherWard) {
    return ward.equals(otherWard) || ward.equals(EVERY_WARD);
  }

  /** The beds as people list them. */
  public SortedSet<String> bedsInOrder() {
    return new TreeSet<>(beds);
  }

  /**
   * @param next the shift that took over, or null to leave it at who did before
   */
  public Shift endedAt(Instant time, @Nullable String next) {
    return new Shift(
        id,
        ward,
        duty,
        account,
        name,
        beds,
        from,
        until,
        time,
        next == null ? successor : next,
        contact);
  }

  @Override
  public String toString() {
    return "Shift[" + id + "]";
  }
}
