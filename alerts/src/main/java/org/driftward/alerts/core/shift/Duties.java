package org.driftward.alerts.core.shift;

import java.time.Instant;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.ShiftDesk.Begin;
import org.driftward.alerts.core.policy.ShiftRules;
import org.driftward.ingest.contract.AccountRole;
import org.jspecify.annotations.Nullable;

/** Whether a duty may begin or end, and for how long. */
public record Duties(ShiftRules rules) {

  /** A field that makes no sense, or null if all do. */
  public record Fault(String field, String why) {}

  /** Everybody sets their own duty; whoever is in charge sets anybody's. */
  public static boolean maySet(String account, Actor actor) {
    return actor.account().equals(account)
        || actor.roles().contains(AccountRole.CHARGE)
        || actor.roles().contains(AccountRole.ADMIN);
  }

  /**
   * @param webhooks names of those that are configured
   */
  public @Nullable Fault fault(Begin begin, Set<String> webhooks, Instant now) {
    if (begin.account().isBlank()) {
      return new Fault("account", "names who is on duty");
    }
    if (begin.ward().equals(Shift.EVERY_WARD) && !everywhere(begin.duty())) {
      return new Fault("ward", "is one ward for a " + begin.duty().word() + " duty");
    }
    if (!begin.beds().isEmpty() && begin.duty() != Duty.BEDSIDE) {
      return new Fault("beds", "are for a bedside duty");
    }
    var contact = begin.contact();
    if (contact != null && contact.webhook() != null && !webhooks.contains(contact.webhook())) {
      return new Fault("webhook", "is not one that is configured");
    }
    var until = until(begin, now);
    if (!until.isAfter(now)) {
      return new Fault("until", "is a time in the future");
    }
    if (until.isAfter(now.plus(rules.longest()))) {
      return new Fault("until", "is at most " + rules.longest() + " away by local policy");
    }
    return null;
  }

  /**
   * @param id of the new shift
   * @throws IllegalArgumentException if there is a {@link #fault}
   */
  public Shift begun(String id, Begin begin, Instant now) {
    return new Shift(
        id,
        begin.ward(),
        begin.duty(),
        begin.account().strip(),
        begin.name().isBlank() ? begin.account().strip() : begin.name().strip(),
        begin.beds(),
        now,
        until(begin, now),
        null,
        null,
        begin.contact());
  }

  /** Somebody who still acts after the end of duty is there, and answers for it a little longer. */
  public Shift stayed(String id, Shift last, Instant now) {
    return new Shift(
        id,
        last.ward(),
        last.duty(),
        last.account(),
        last.name(),
        Set.of(),
        now,
        now.plus(rules.staying()),
        null,
        last.successor(),
        last.contact());
  }

  /** Whether the running shift ends when the other begins. */
  public static boolean replaces(Begin begin, Shift running) {
    boolean same = running.ward().equals(begin.ward()) && running.duty() == begin.duty();
    return running.id().equals(begin.takesOver())
        || (same && begin.duty() == Duty.CHARGE)
        || (same && running.account().equals(begin.account().strip()));
  }

  private Instant until(Begin begin, Instant now) {
    return begin.until() == null ? now.plus(rules.usual()) : begin.until();
  }

  private static boolean everywhere(Duty duty) {
    return duty == Duty.RESPONSE || duty == Duty.ON_CALL;
  }
}
