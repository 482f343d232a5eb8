package org.driftward.alerts.core.episode;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.driftward.alerts.core.trigger.Severity;
import org.driftward.alerts.core.trigger.Trigger;

/**
 * What the newest picture gives reason to. Kept, so that it can be judged again when what kept some
 * of it quiet is over.
 *
 * @param asOf clinical time of the picture
 * @param suppressed what would have fired but for the care plan's altered limits
 * @param totals of each score, at least
 * @param untold whether it was entered too late to call anybody by itself: the clock of the next
 *     set tells of it
 */
public record Judgement(
    String assessment,
    Instant asOf,
    List<Trigger> fired,
    List<Trigger> suppressed,
    Map<String, BigDecimal> totals,
    boolean untold) {

  public Judgement {
    Objects.requireNonNull(assessment, "assessment");
    Objects.requireNonNull(asOf, "asOf");
    fired = List.copyOf(fired);
    suppressed = List.copyOf(suppressed);
    totals = Map.copyOf(totals);
  }

  /** The same without altered limits: everything fires. */
  Judgement unlimited() {
    return new Judgement(assessment, asOf, all(), List.of(), totals, untold);
  }

  private List<Trigger> all() {
    var byRule = new HashMap<String, Trigger>();
    Stream.concat(fired.stream(), suppressed.stream())
        .forEach(trigger -> byRule.merge(trigger.rule(), trigger, Trigger::and));
    return byRule.values().stream().sorted(Trigger.GRAVEST_FIRST).toList();
  }

  /** Whether whoever looked at this picture saw all of that, and as bad. */
  boolean covers(List<Concern> concerns) {
    return concerns.stream()
        .allMatch(
            concern ->
                concern.seen() != null
                    && !concern.seen().worseThan(severity(concern.rule()).orElse(null)));
  }

  /** Whether only the assessment gave the concern, and gives it no more. */
  boolean corrects(Concern concern) {
    return concern.restsOnlyOn(assessment)
        && severity(concern.rule()).map(s -> s.level().compareTo(concern.level()) < 0).orElse(true);
  }

  private Optional<Severity> severity(String rule) {
    return all().stream()
        .filter(trigger -> trigger.rule().equals(rule))
        .map(Trigger::severity)
        .findFirst();
  }
}
