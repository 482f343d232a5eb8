package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Where managers ask how the wards have done. Thread-safe, blocking. */
public interface AuditDesk {

  /**
   * Every measure. One whose data are not kept says so.
   *
   * @throws UnavailableException if no history is kept in this house
   */
  AuditReport report(AuditQuestion question);

  /**
   * What an edited policy would have made of the recorded pictures, beside the policy in force.
   * Both are replayed with the same people, who come to the bedside when an alarm's time for it is
   * half over, so that only the policies differ.
   *
   * @param policy a policy file as text, with a section {@code escalation}
   * @throws IllegalArgumentException naming what is wrong with the policy
   * @throws UnavailableException if no history is kept in this house
   */
  PolicyTrial trial(String policy, AuditQuestion question);

  /** The policy in force, as the file it was read from. */
  String policyInForce();

  /** Keeps an event in the journal; durable when it returns. */
  void record(AuditEvent event, Actor actor);

  /**
   * Takes an event back, for the measures; the journal keeps both.
   *
   * @return false if there is no such event
   */
  boolean withdraw(String event, String reason, Actor actor);

  /** Events in the stretch that were not withdrawn, oldest first. */
  List<AuditEvent> events(@Nullable Set<String> wards, Instant from, Instant to);

  /** There is no history to look back at. */
  final class UnavailableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public UnavailableException(String message) {
      super(message);
    }
  }
}
