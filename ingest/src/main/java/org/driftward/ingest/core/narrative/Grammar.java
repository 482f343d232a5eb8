package org.driftward.ingest.core.narrative;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What belongs to no single finding, as the grammar file writes it.
 *
 * @param spellings other spellings by word: the one they are read as
 * @param numbers number words
 * @param misheard words that are numbers right after a ten
 * @param units phrases by UCUM code
 * @param sides phrases by left, right and both
 * @param places body sites by phrases
 * @param options phrases by option, for every finding that has the option
 * @param usual phrases for the expected option or grade
 * @param cues phrases by {@link Cue}
 * @param regions headings by region of the catalogue
 * @param numbersTogether phrases with numbers of several findings
 * @param together phrases that say several findings
 */
public record Grammar(
    Map<String, String> spellings,
    Map<String, Integer> numbers,
    Map<String, Integer> misheard,
    Map<String, List<String>> units,
    Map<String, List<String>> sides,
    List<Sites> places,
    Map<String, List<String>> options,
    List<String> usual,
    Map<String, List<String>> cues,
    Map<String, List<String>> regions,
    List<Numbers> numbersTogether,
    List<Together> together) {

  /** Phrases for one or several sites. */
  public record Sites(List<String> sites, List<String> says) {}

  /**
   * @param atLeast the first number from which on it is read so; null where any will do
   */
  public record Numbers(List<String> says, List<String> codes, @Nullable Integer atLeast) {}

  /**
   * @param findings option or grade by code
   */
  public record Together(List<String> says, Map<String, String> findings) {}
}
