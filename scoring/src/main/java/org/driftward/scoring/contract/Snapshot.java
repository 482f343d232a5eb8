package org.driftward.scoring.contract;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Everything scoring says about an encounter as of one assessment.
 *
 * <p>Identity is ({@code encounter}, {@code assessment}). A late, corrected or retracted assessment
 * makes scoring send the snapshots it affects again, with a higher {@code sequence}; of two
 * snapshots of the same assessment the higher sequence wins. Sequence and {@code acceptedAt} are
 * about delivery; the rest depends only on which assessments exist, never on their order.
 *
 * @param asOf clinical time of the assessment
 * @param assessment id of the assessment
 * @param sequence counts what scoring has sent for this encounter, from 1
 * @param latest whether this is the newest clinical picture; only that one raises or lowers an
 *     episode. When the newest assessment is retracted, the one before is sent again as latest.
 * @param withdrawn whether the assessment was retracted: the snapshot is void, its lists are empty
 * @param policy version of the policy that made it
 * @param carePlan version of the care plan in force, or 0 for the standard settings
 * @param scores those that apply to the patient, the leading one first; empty when withdrawn
 * @param urgent newest values that call somebody by themselves, gravest first
 * @param lastSet clinical time of the newest set of vital signs
 * @param partial codes of the core observations that the newest set lacks
 * @param nextDue when the next set is due, by policy, score and care plan
 * @param interval between the two
 * @param intervalReason why this interval, in words
 * @param acceptedAt when intake acknowledged the record that caused this, for latency only
 */
public record Snapshot(
    String encounter,
    Instant asOf,
    String assessment,
    long sequence,
    boolean latest,
    boolean withdrawn,
    String policy,
    long carePlan,
    List<Score> scores,
    List<Drift> drift,
    List<Trend> trend,
    List<ChangedFinding> changed,
    List<UrgentFinding> urgent,
    @Nullable Instant lastSet,
    List<String> partial,
    @Nullable Instant nextDue,
    @Nullable Duration interval,
    @Nullable String intervalReason,
    @Nullable Instant acceptedAt) {

  public Snapshot {
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(asOf, "asOf");
    Objects.requireNonNull(assessment, "assessment");
    Objects.requireNonNull(policy, "policy");
    scores = List.copyOf(scores);
    drift = List.copyOf(drift);
    trend = List.copyOf(trend);
    changed = List.copyOf(changed);
    // Snapshots of before this field have none.
    urgent = urgent == null ? List.of() : List.copyOf(urgent);
    partial = List.copyOf(partial);
    if (withdrawn && latest) {
      throw new IllegalArgumentException("a withdrawn snapshot is never the newest picture");
    }
  }

  /** A snapshot without an urgent finding. */
  public Snapshot(
      String encounter,
      Instant asOf,
      String assessment,
      long sequence,
      boolean latest,
      boolean withdrawn,
      String policy,
      long carePlan,
      List<Score> scores,
      List<Drift> drift,
      List<Trend> trend,
      List<ChangedFinding> changed,
      @Nullable Instant lastSet,
      List<String> partial,
      @Nullable Instant nextDue,
      @Nullable Duration interval,
      @Nullable String intervalReason,
      @Nullable Instant acceptedAt) {
    this(
        encounter,
        asOf,
        assessment,
        sequence,
        latest,
        withdrawn,
        policy,
        carePlan,
        scores,
        drift,
        trend,
        changed,
        List.of(),
        lastSet,
        partial,
        nextDue,
        interval,
        intervalReason,
        acceptedAt);
  }

  /** The score that leads on boards, or null where none applies to the patient. */
  public @Nullable Score leading() {
    return scores.isEmpty() ? null : scores.get(0);
  }

  /** Whether the next set is overdue at {@code now}. */
  public boolean overdue(Instant now) {
    return nextDue != null && now.isAfter(nextDue);
  }

  /** The same content, stamped for sending. */
  public Snapshot sent(long sequence, boolean latest, @Nullable Instant acceptedAt) {
    return new Snapshot(
        encounter,
        asOf,
        assessment,
        sequence,
        latest,
        withdrawn,
        policy,
        carePlan,
        scores,
        drift,
        trend,
        changed,
        urgent,
        lastSet,
        partial,
        nextDue,
        interval,
        intervalReason,
        acceptedAt);
  }

  @Override
  public String toString() {
    return "Snapshot[" + encounter + " sequence " + sequence + "]";
  }
}
