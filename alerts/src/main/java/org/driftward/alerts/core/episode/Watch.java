package org.driftward.alerts.core.episode;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.driftward.alerts.core.trigger.Trigger;
import org.jspecify.annotations.Nullable;

/**
 * What is kept so that nothing is lost when that ends which keeps it quiet.
 *
 * @param newest what the newest picture gives reason to, or null before the first
 * @param signed the same of the picture that the signer of the care plan saw, or null
 * @param unfinished the concerns of an episode that a discharge closed; it may be taken back
 */
public record Watch(
    @Nullable Judgement newest, @Nullable Judgement signed, List<Concern> unfinished) {

  static final Watch NOTHING = new Watch(null, null, List.of());

  public Watch {
    unfinished = List.copyOf(unfinished);
  }

  Watch over(@Nullable Judgement picture) {
    return new Watch(picture, signed, unfinished);
  }

  /** A care plan is signed over the newest picture. */
  Watch signedOver() {
    return new Watch(newest, newest, unfinished);
  }

  Watch leaving(List<Concern> concerns) {
    return new Watch(newest, signed, concerns);
  }

  /** Rules that the altered limits keep quiet now. */
  Set<String> suppressed() {
    return newest == null
        ? Set.of()
        : newest.suppressed().stream().map(Trigger::rule).collect(Collectors.toSet());
  }

  /** Whether the signer of the care plan saw all of that, and as bad. */
  boolean coversBySignature(List<Concern> concerns) {
    return signed != null && signed.covers(concerns);
  }

  /** The total of each score that the signer of the care plan saw. */
  Map<String, BigDecimal> totalsSigned() {
    return signed == null ? Map.of() : signed.totals();
  }
}
