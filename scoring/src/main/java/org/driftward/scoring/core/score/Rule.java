package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.scoring.core.Reading;
import org.jspecify.annotations.Nullable;

/**
 * One way to conclude a word from what was recorded.
 *
 * @param sources one finding, or several grades of one examination that are added up; these count
 *     only if they were taken at the same time
 * @param span numbers it holds for; without meaning where {@code words} is given
 * @param words codes it holds for; empty for a numeric rule
 * @param gives the place of the word it concludes, {@link #AS_RECORDED}, or {@link #ASK} where the
 *     findings contradict every older answer and yet give none
 */
public record Rule(List<Source> sources, Span span, Set<String> words, int gives) {

  /** The recorded word itself. */
  public static final int AS_RECORDED = -1;

  /** Somebody has to say. */
  public static final int ASK = -2;

  public Rule {
    sources = List.copyOf(sources);
    words = Set.copyOf(words);
    if (sources.isEmpty()) {
      throw new IllegalArgumentException("a rule on no finding");
    }
    if (sources.size() > 1 && !words.isEmpty()) {
      throw new IllegalArgumentException("words do not add up");
    }
  }

  /** When what the rule needs was recorded, if the rule holds; else null. */
  @Nullable Instant holds(Sight sight) {
    var first = sight.fresh(sources.get(0));
    if (first == null) {
      return null;
    }
    return holds(first, sight) ? first.takenAt() : null;
  }

  private boolean holds(Reading first, Sight sight) {
    if (!words.isEmpty()) {
      return first.value() instanceof FindingValue.Coded coded && words.contains(coded.code());
    }
    var sum = BigDecimal.ZERO;
    for (var source : sources) {
      var reading = sight.fresh(source);
      var number = reading == null ? null : source.number(reading);
      if (reading == null || number == null || !reading.takenAt().equals(first.takenAt())) {
        return false;
      }
      sum = sum.add(number);
    }
    return span.holds(sum);
  }

  /** What was recorded, in words. */
  String because(Sight sight) {
    var text = new StringBuilder();
    for (var source : sources) {
      var reading = sight.fresh(source);
      if (reading != null) {
        text.append(text.isEmpty() ? "" : ", ").append(source.words(reading));
      }
    }
    return text.toString();
  }

  @Nullable String recorded(Sight sight) {
    var reading = sight.fresh(sources.get(0));
    return reading != null && reading.value() instanceof FindingValue.Coded coded
        ? coded.code()
        : null;
  }
}
