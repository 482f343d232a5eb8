package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.driftward.scoring.core.policy.Restart;
import org.jspecify.annotations.Nullable;

/** When documented changes have made an encounter's usual values new ones. */
final class Restarts {

  private static final int STANDARD_SCALE = 1;

  private final Set<Restart> counting;

  /**
   * @param counting the changes that the policy counts
   */
  Restarts(Set<Restart> counting) {
    this.counting = counting;
  }

  /** The last change after {@code from} and no later than {@code upTo}, or null. */
  @Nullable Instant last(Facts facts, Instant from, Instant upTo) {
    if (facts.transfers().isEmpty() && facts.plans().isEmpty()) {
      return null;
    }
    Instant last = null;
    for (var change : changes(facts)) {
      if (change.isAfter(from) && !change.isAfter(upTo) && (last == null || change.isAfter(last))) {
        last = change;
      }
    }
    return last;
  }

  private List<Instant> changes(Facts facts) {
    var changes = new ArrayList<Instant>();
    if (counting.contains(Restart.TRANSFER)) {
      changes.addAll(facts.transfers());
    }
    int scale = STANDARD_SCALE;
    for (var plan : facts.reigning()) {
      boolean otherScale = plan.oxygenScale() != scale;
      scale = plan.oxygenScale();
      if (counting.contains(Restart.CARE_PLAN)
          || (otherScale && counting.contains(Restart.OXYGEN_SCALE))) {
        changes.add(plan.from());
      }
      if (plan.newBaseline() != null && counting.contains(Restart.NEW_BASELINE)) {
        changes.add(plan.newBaseline());
      }
    }
    return changes;
  }
}
