package org.driftward.ingest.core.narrative;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something that was recognised in the text.
 *
 * @param first index of its first token
 * @param end exclusive
 * @param meaning of a phrase; without any content for a number
 * @param amount a number; null for a phrase
 * @param numbers of a phrase with numbers in it
 * @param plural whether a word of it stands in the plural
 */
record Mention(
    int first,
    int end,
    Meaning meaning,
    @Nullable Amount amount,
    List<Numeral> numbers,
    boolean plural) {

  private static final Meaning NONE = new Meaning();

  /** The sign of doubt before a word. */
  static final Mention DOUBT = new Mention(0, 0, Meaning.of(Cue.HEDGE), null, List.of(), false);

  static Mention of(Amount amount) {
    return new Mention(amount.first(), amount.end(), NONE, amount, List.of(), false);
  }

  static Mention of(int first, Lexicon.Hit hit) {
    return new Mention(
        first, hit.match().end(), hit.meaning(), null, hit.match().numbers(), hit.match().plural());
  }

  boolean is(Cue cue) {
    return meaning.has(cue);
  }

  boolean content() {
    return amount != null
        || meaning.topic()
        || !meaning.options.isEmpty()
        || !meaning.numbers.isEmpty();
  }

  boolean valued() {
    return amount != null || !meaning.options.isEmpty() || !meaning.numbers.isEmpty();
  }
}
