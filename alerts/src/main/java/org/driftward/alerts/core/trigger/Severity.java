package org.driftward.alerts.core.trigger;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * How bad what a rule found is: enough to tell later whether it has become worse.
 *
 * @param degrees what was found, and how bad in the smallest steps that count; larger is worse.
 *     Empty where the rule knows no degrees, or where they were not kept
 */
public record Severity(Level level, Map<String, Double> degrees) {

  /** Sums of binary fractions are not exact. */
  private static final double TINY = 1e-9;

  public Severity {
    Objects.requireNonNull(level, "level");
    degrees = Map.copyOf(degrees);
  }

  /** Courses of before kept the level alone, as one word. */
  public static Severity fromString(String level) {
    return new Severity(Word.parse(Level.class, level), Map.of());
  }

  /**
   * Whether this is worse than what was seen: a higher level, something more, or a step more of the
   * same.
   *
   * @param seen or null if nothing was
   */
  public boolean worseThan(@Nullable Severity seen) {
    if (seen == null || level.compareTo(seen.level) > 0) {
      return true;
    }
    return !seen.degrees.isEmpty()
        && degrees.entrySet().stream().anyMatch(found -> seen.isPassedBy(found));
  }

  private boolean isPassedBy(Map.Entry<String, Double> found) {
    @Nullable Double known = degrees.get(found.getKey());
    return known == null || found.getValue() >= known + 1 - TINY;
  }

  /** The worse of both in every respect. */
  public Severity and(Severity other) {
    var all = new HashMap<>(degrees);
    other.degrees.forEach((what, degree) -> all.merge(what, degree, Math::max));
    return new Severity(graver(level, other.level), all);
  }

  public static Level graver(Level one, Level other) {
    return one.compareTo(other) >= 0 ? one : other;
  }
}
