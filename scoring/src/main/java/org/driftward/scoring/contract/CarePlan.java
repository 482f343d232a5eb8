package org.driftward.scoring.contract;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.driftward.scoring.contract.StandingFact.Fact;
import org.jspecify.annotations.Nullable;

/**
 * Clinical settings of one encounter, each signed. Limits, interval and hold end with {@code
 * until}: the standard settings are back. Standing facts (oxygen scale, populations, usual
 * consciousness, ceiling) hold until somebody signs otherwise; {@link #standingAt} says which do.
 *
 * @param version counts the plans of the encounter from 1; the higher wins
 * @param oxygenScale 1 or 2. Scale 2 is a clinician's prescription for hypercapnic respiratory
 *     failure, never inferred (RCP NEWS2 2017)
 * @param limits altered limits; they change who is told, never the score
 * @param interval between sets of observations, or null for the policy's
 * @param ceiling the agreed ceiling of care in words, or null; changes the response, never the
 *     score
 * @param hold or null
 * @param populations groups that score definitions ask for, for example {@code pregnant}: which
 *     scores apply goes by age and by these. In alphabetical order, each once
 * @param newBaseline clinical time from which the patient's usual values are new ones, as after
 *     surgery, or null; may lie before {@code from}
 * @param signedBy account of the person with the role for it
 * @param approvedBy the senior clinician who agreed, as people know them, or null
 * @param approverRole of that clinician, in words, or null
 * @param usualConsciousness the patient's own usual word for consciousness where that is not alert,
 *     for example {@code confused}; null otherwise
 * @param standing who vouches for each standing fact, and when it is looked at again; a fact
 *     without an entry, as in plans of before there were any, ends with the plan
 */
public record CarePlan(
    String encounter,
    long version,
    int oxygenScale,
    List<Limit> limits,
    @Nullable Duration interval,
    @Nullable String ceiling,
    @Nullable Hold hold,
    List<String> populations,
    @Nullable Instant newBaseline,
    String reason,
    String signedBy,
    Instant from,
    Instant until,
    @Nullable String approvedBy,
    @Nullable String approverRole,
    @Nullable String usualConsciousness,
    List<StandingFact> standing) {

  /**
   * Values from {@code low} to {@code high} raise no trigger for this patient.
   *
   * @param low in the catalogue's unit, or null for no lower limit
   * @param high or null for no upper limit
   * @param oldLow the lower limit that it replaces, or null; filled in when the plan is signed
   * @param oldHigh the upper limit that it replaces, or null
   */
  public record Limit(
      String code,
      @Nullable BigDecimal low,
      @Nullable BigDecimal high,
      @Nullable BigDecimal oldLow,
      @Nullable BigDecimal oldHigh) {

    public Limit(String code, @Nullable BigDecimal low, @Nullable BigDecimal high) {
      this(code, low, high, null, null);
    }

    /** The same, saying what it replaces. */
    public Limit replacing(@Nullable BigDecimal lower, @Nullable BigDecimal upper) {
      return new Limit(code, low, high, lower, upper);
    }

    public Limit {
      Objects.requireNonNull(code, "code");
      if (low == null && high == null) {
        throw new IllegalArgumentException("a limit on " + code + " without a value");
      }
      if (low != null && high != null && low.compareTo(high) > 0) {
        throw new IllegalArgumentException(code + ": limit " + low + " is above " + high);
      }
    }
  }

  /** Escalation rests, for a procedure or at the end of life, until the stated time. */
  public record Hold(String reason, Instant until) {
    public Hold {
      Objects.requireNonNull(reason, "reason");
      Objects.requireNonNull(until, "until");
    }
  }

  public CarePlan {
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(signedBy, "signedBy");
    limits = limits == null ? List.of() : List.copyOf(limits);
    standing = standing == null ? List.of() : List.copyOf(standing);
    populations =
        populations == null ? List.of() : populations.stream().distinct().sorted().toList();
    if (oxygenScale != 1 && oxygenScale != 2) {
      throw new IllegalArgumentException("oxygen scale " + oxygenScale + " is neither 1 nor 2");
    }
    if (!from.isBefore(until)) {
      throw new IllegalArgumentException("a care plan that ends before it begins");
    }
    if (newBaseline != null && !newBaseline.isBefore(until)) {
      throw new IllegalArgumentException("a new baseline from after the care plan's end");
    }
    if (interval != null && (interval.isZero() || interval.isNegative())) {
      throw new IllegalArgumentException("interval " + interval + " is not positive");
    }
  }

  /** A plan for a patient of no special population whose usual values go on. */
  public CarePlan(
      String encounter,
      long version,
      int oxygenScale,
      List<Limit> limits,
      @Nullable Duration interval,
      @Nullable String ceiling,
      @Nullable Hold hold,
      String reason,
      String signedBy,
      Instant from,
      Instant until) {
    this(
        encounter,
        version,
        oxygenScale,
        limits,
        interval,
        ceiling,
        hold,
        List.of(),
        null,
        reason,
        signedBy,
        from,
        until);
  }

  /** A plan to which no senior clinician has yet agreed. */
  public CarePlan(
      String encounter,
      long version,
      int oxygenScale,
      List<Limit> limits,
      @Nullable Duration interval,
      @Nullable String ceiling,
      @Nullable Hold hold,
      List<String> populations,
      @Nullable Instant newBaseline,
      String reason,
      String signedBy,
      Instant from,
      Instant until) {
    this(
        encounter,
        version,
        oxygenScale,
        limits,
        interval,
        ceiling,
        hold,
        populations,
        newBaseline,
        reason,
        signedBy,
        from,
        until,
        null,
        null,
        null,
        List.of());
  }

  /** The same settings under the signer's account, as the encounter's plan number so-and-so. */
  public CarePlan signed(long number, String account) {
    return with(number, limits, account, approvedBy, approverRole, standing);
  }

  /** The same with other altered limits. */
  public CarePlan withLimits(List<Limit> others) {
    return with(version, others, signedBy, approvedBy, approverRole, standing);
  }

  /** The same, agreed by a senior clinician. */
  public CarePlan approved(@Nullable String by, @Nullable String role) {
    return with(version, limits, signedBy, by, role, standing);
  }

  /** The same, with these facts standing. */
  public CarePlan vouchedFor(List<StandingFact> facts) {
    return with(version, limits, signedBy, approvedBy, approverRole, facts);
  }

  private CarePlan with(
      long number,
      List<Limit> altered,
      String account,
      @Nullable String approver,
      @Nullable String role,
      List<StandingFact> facts) {
    return new CarePlan(
        encounter,
        number,
        oxygenScale,
        altered,
        interval,
        ceiling,
        hold,
        populations,
        newBaseline,
        reason,
        account,
        from,
        until,
        approver,
        role,
        usualConsciousness,
        facts);
  }

  /** Whether anything in it ends with it. */
  public boolean holdsOnlyForAWhile() {
    return !limits.isEmpty() || interval != null || hold != null;
  }

  /** The standing facts at {@code time}; those that nobody vouches for end with the plan. */
  public StandingFacts standingAt(Instant time) {
    return new StandingFacts(
        holds(Fact.OXYGEN_SCALE, time) ? oxygenScale : 1,
        holds(Fact.POPULATIONS, time) ? populations : List.of(),
        holds(Fact.USUAL_CONSCIOUSNESS, time) ? usualConsciousness : null,
        holds(Fact.CEILING, time) ? ceiling : null);
  }

  /** Who vouches for a fact, or null where nobody does. */
  public @Nullable StandingFact standing(Fact fact) {
    return standing.stream().filter(signed -> signed.fact() == fact).findFirst().orElse(null);
  }

  /** The facts whose review is due at {@code now}, in the order of {@link Fact}. */
  public List<StandingFact> reviewsDue(Instant now) {
    return standing.stream()
        .filter(signed -> !now.isBefore(signed.reviewBy()))
        .sorted(Comparator.comparing(StandingFact::fact))
        .toList();
  }

  private boolean holds(Fact fact, Instant time) {
    return !time.isBefore(from) && (standing(fact) != null || time.isBefore(until));
  }

  /** Whether the plan is in force at {@code time}: from inclusive, until exclusive. */
  public boolean inForce(Instant time) {
    return !time.isBefore(from) && time.isBefore(until);
  }

  /** The altered limit of a finding, or null under the standard. */
  public @Nullable Limit limit(String code) {
    return limits.stream().filter(limit -> limit.code().equals(code)).findFirst().orElse(null);
  }

  @Override
  public String toString() {
    return "CarePlan[" + encounter + " version " + version + "]";
  }
}
