package org.driftward.scoring.contract;

import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.jspecify.annotations.Nullable;

/**
 * What scoring would say of an assessment that nobody has sent yet: the same core, the same policy
 * and the same score definitions as the topology, on a history handed in. Nothing is kept and
 * nothing is sent. A pure function; thread-safe. Costs as much as folding the history once.
 */
@FunctionalInterface
public interface Preview {

  /**
   * @param draft takes the place of an earlier revision in {@code known}, whatever its own number
   * @throws IllegalArgumentException if the draft is a retraction, of which there is nothing to say
   */
  Outlook of(Known known, Assessment draft);

  /**
   * What is known of an encounter.
   *
   * @param plans its care plans, every version that is known
   * @param assessments the counting revision of each, retracted ones among them, in any order
   */
  record Known(Encounter encounter, List<CarePlan> plans, List<Assessment> assessments) {
    public Known {
      Objects.requireNonNull(encounter, "encounter");
      plans = List.copyOf(plans);
      assessments = List.copyOf(assessments);
    }

    @Override
    public String toString() {
      return "Known[" + encounter.id() + "]";
    }
  }

  /**
   * @param draft the snapshot of the draft's own moment
   * @param newest the newest clinical picture with the draft in the history: {@code draft} itself
   *     unless a later assessment exists
   * @param before the newest clinical picture without it, or null where there is none
   */
  record Outlook(Snapshot draft, Snapshot newest, @Nullable Snapshot before) {
    public Outlook {
      Objects.requireNonNull(draft, "draft");
      Objects.requireNonNull(newest, "newest");
    }

    /** Whether a later assessment exists, so that the draft changes the past only. */
    public boolean late() {
      return !draft.latest();
    }
  }
}
