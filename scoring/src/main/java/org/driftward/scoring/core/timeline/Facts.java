package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Stay;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.StandingFacts;
import org.jspecify.annotations.Nullable;

/**
 * What scoring knows of an encounter besides its assessments. Like the history a function of what
 * was received, never of its order: of two versions the higher counts.
 *
 * @param version of the encounter, 0 while none has arrived
 * @param birthDate or null while unknown
 * @param transfers clinical times at which the patient came to another ward, ascending
 * @param mergedInto the surviving encounter, whose history this one's now is, or null
 * @param plans every care plan, by version; earlier moments are judged by the plan of their time
 * @param adopted versions of the editions that the encounter is judged by, oldest adoption first
 */
public record Facts(
    long version,
    @Nullable LocalDate birthDate,
    List<Instant> transfers,
    @Nullable String mergedInto,
    List<CarePlan> plans,
    List<String> adopted) {

  public static final Facts NONE = new Facts(0, null, List.of(), null, List.of(), List.of());

  /** Two versions with one number are a fault of the sender; any total order will do. */
  private static final Comparator<Facts> ENCOUNTER_PRECEDENCE =
      Comparator.comparingLong(Facts::version)
          .thenComparing(Facts::birthDate, nullsFirst())
          .thenComparing(facts -> facts.transfers().toString())
          .thenComparing(Facts::mergedInto, nullsFirst());

  private static final Comparator<CarePlan> PLAN_PRECEDENCE =
      Comparator.comparingLong(CarePlan::version)
          .thenComparing(CarePlan::from)
          .thenComparing(CarePlan::until)
          .thenComparingInt(CarePlan::oxygenScale)
          .thenComparing(CarePlan::interval, nullsFirst())
          .thenComparing(plan -> plan.populations().toString())
          .thenComparing(CarePlan::usualConsciousness, nullsFirst())
          .thenComparing(plan -> plan.standing().toString())
          .thenComparing(CarePlan::newBaseline, nullsFirst())
          .thenComparing(CarePlan::reason);

  public Facts {
    transfers = List.copyOf(transfers);
    plans = List.copyOf(plans);
    adopted = adopted == null ? List.of() : List.copyOf(adopted);
  }

  /** These facts with what the encounter says, unless a higher version has said it already. */
  Facts with(Encounter encounter) {
    var said =
        new Facts(
            encounter.version(),
            encounter.patient().birthDate(),
            transfers(encounter.stays()),
            encounter.mergedInto(),
            plans,
            adopted);
    return ENCOUNTER_PRECEDENCE.compare(said, this) > 0 ? said : this;
  }

  /** These facts with one more care plan. */
  Facts with(CarePlan plan) {
    var kept = new ArrayList<CarePlan>();
    for (var other : plans) {
      if (other.version() != plan.version()) {
        kept.add(other);
      } else if (PLAN_PRECEDENCE.compare(other, plan) >= 0) {
        return this;
      }
    }
    kept.add(plan);
    kept.sort(PLAN_PRECEDENCE);
    return new Facts(version, birthDate, transfers, mergedInto, kept, adopted);
  }

  /** These facts, judged by these editions. */
  Facts adopting(List<String> editions) {
    return new Facts(version, birthDate, transfers, mergedInto, plans, editions);
  }

  /** Versions of care plans below the newest that never came; versions count from 1. */
  int plansMissing() {
    return plans.isEmpty() ? 0 : (int) (plans.get(plans.size() - 1).version() - plans.size());
  }

  boolean merged() {
    return mergedInto != null;
  }

  /**
   * The care plan in force at a clinical time. A plan replaces every lower version from its {@code
   * from} on; when its {@code until} has come the standard settings are back, not an older plan.
   */
  Optional<CarePlan> planAt(Instant time) {
    for (int i = plans.size() - 1; i >= 0; i--) {
      if (!plans.get(i).from().isAfter(time)) {
        return Optional.of(plans.get(i)).filter(plan -> plan.inForce(time));
      }
    }
    return Optional.empty();
  }

  /** The standing facts at a clinical time, signed in the newest plan that had begun. */
  StandingFacts standingAt(Instant time) {
    for (int i = plans.size() - 1; i >= 0; i--) {
      if (!plans.get(i).from().isAfter(time)) {
        return plans.get(i).standingAt(time);
      }
    }
    return StandingFacts.NONE;
  }

  /**
   * The plans that were in force at some time or might have been, had their end not come: in the
   * order of time, without those that a higher version has replaced from their beginning.
   */
  List<CarePlan> reigning() {
    if (plans.isEmpty()) {
      return plans;
    }
    var reigning = new ArrayDeque<CarePlan>();
    for (int i = plans.size() - 1; i >= 0; i--) {
      var next = reigning.peekFirst();
      if (next == null || plans.get(i).from().isBefore(next.from())) {
        reigning.addFirst(plans.get(i));
      }
    }
    return List.copyOf(reigning);
  }

  /**
   * The earliest clinical time at which these facts may judge otherwise than {@code other}; empty
   * where they never do.
   */
  Optional<Instant> differFrom(Facts other) {
    if (!Objects.equals(birthDate, other.birthDate)
        || !Objects.equals(mergedInto, other.mergedInto)) {
      return Optional.of(Instant.MIN);
    }
    var times = new ArrayList<Instant>();
    times.addAll(onlyInOne(transfers, other.transfers));
    onlyInOne(plans, other.plans).forEach(plan -> times.add(plan.from()));
    // A plan that reigns no more takes back the new baseline it had named.
    onlyInOne(reigning(), other.reigning()).stream()
        .map(CarePlan::newBaseline)
        .filter(Objects::nonNull)
        .forEach(times::add);
    return times.stream().min(Comparator.naturalOrder());
  }

  /** Names neither the patient nor the settings. */
  @Override
  public String toString() {
    return "Facts[version " + version + ", " + plans.size() + " care plans]";
  }

  private static List<Instant> transfers(List<Stay> stays) {
    var transfers = new ArrayList<Instant>();
    for (int i = 1; i < stays.size(); i++) {
      if (!stays.get(i).ward().equals(stays.get(i - 1).ward())) {
        transfers.add(stays.get(i).from());
      }
    }
    return transfers.stream().distinct().sorted().toList();
  }

  private static <T> HashSet<T> onlyInOne(List<T> one, List<T> other) {
    var difference = new HashSet<T>(one);
    other.forEach(
        element -> {
          if (!difference.remove(element)) {
            difference.add(element);
          }
        });
    return difference;
  }

  private static <T extends Comparable<? super T>> Comparator<@Nullable T> nullsFirst() {
    return Comparator.nullsFirst(Comparator.naturalOrder());
  }
}
