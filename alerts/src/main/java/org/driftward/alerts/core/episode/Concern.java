package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.driftward.alerts.contract.Reason;
import org.driftward.alerts.core.trigger.Severity;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * A trigger that holds an episode open, whether or not the newest set still meets it.
 *
 * @param level at which it stands
 * @param seen how bad the newest set found it, or null if that set did not meet it
 * @param words of the newest trigger that did
 * @param since clinical time of its first firing in this episode
 * @param lasting whether it takes sustained recovery to lay it to rest
 * @param witness the assessments that it rests on; null where it rests on none, as on a clock or on
 *     somebody's word
 */
public record Concern(
    String rule,
    Level level,
    @Nullable Severity seen,
    String words,
    Instant since,
    boolean lasting,
    @Nullable Witness witness) {
  public Concern {
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(since, "since");
  }

  static Concern of(Trigger trigger, Instant since, @Nullable String assessment) {
    return new Concern(
        trigger.rule(),
        trigger.level(),
        trigger.severity(),
        trigger.words(),
        since,
        trigger.lasting(),
        assessment == null ? null : new Witness(assessment, assessment));
  }

  Concern joinedBy(Trigger trigger, Level standing, @Nullable String assessment) {
    var rests = assessment == null || witness == null ? witness : witness.joinedBy(assessment);
    return new Concern(
        rule, standing, trigger.severity(), trigger.words(), since, trigger.lasting(), rests);
  }

  Concern unseen(Level standing) {
    return new Concern(rule, standing, null, words, since, lasting, witness);
  }

  boolean restsOn(String assessment) {
    return witness != null
        && (witness.first().equals(assessment) || witness.last().equals(assessment));
  }

  /** Whether nothing but this assessment ever gave it. */
  boolean restsOnlyOn(String assessment) {
    return witness != null && witness.isOnly(assessment);
  }

  /** What remains of it when an assessment was a mistake. */
  Optional<Concern> without(String assessment) {
    if (witness == null) {
      return Optional.of(this);
    }
    boolean newest = witness.last().equals(assessment);
    return witness
        .without(assessment)
        .map(w -> new Concern(rule, level, newest ? null : seen, words, since, lasting, w));
  }

  boolean isWorry() {
    return Trigger.isWorry(rule);
  }

  Reason reason() {
    return new Reason(rule, level, words + remark(), since);
  }

  private String remark() {
    if (seen == null) {
      return "; not in the newest set, recovery has not lasted yet";
    }
    return seen.level() == level ? "" : "; less now, recovery has not lasted yet";
  }
}
