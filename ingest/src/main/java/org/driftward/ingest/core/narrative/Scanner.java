package org.driftward.ingest.core.narrative;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Finds the phrases and numbers of a text, from left to right, the longest at each place. */
final class Scanner {

  private static final BigDecimal TWO = BigDecimal.valueOf(2);

  private final Lexicon phrases;
  private final AmountReader amounts;

  Scanner(Vocabulary vocabulary) {
    this.phrases = vocabulary.phrases();
    this.amounts = vocabulary.amounts();
  }

  /** Tokens that mean nothing are left out. */
  List<Mention> mentions(Line line) {
    var mentions = new ArrayList<Mention>();
    int at = 0;
    while (at < line.size()) {
      var mention = at(line, at);
      if (mention == null) {
        at++;
      } else {
        mentions.add(mention);
        at = mention.end();
      }
    }
    return mentions;
  }

  private Mention at(Line line, int at) {
    var hit = phrases.at(line, at);
    var amount = amounts.at(line, at);
    boolean phrase =
        hit != null
            && readable(line, hit)
            && (amount == null
                || hit.match().end() >= amount.end()
                || !hit.meaning().numbers.isEmpty());
    if (phrase) {
      return Mention.of(at, hit);
    }
    return amount == null ? null : Mention.of(amount);
  }

  /** "2/10" is no pair of pressures. */
  private boolean readable(Line line, Lexicon.Hit hit) {
    var meaning = hit.meaning();
    var numbers = hit.match().numbers();
    if (meaning.numbers.isEmpty() || numbers.isEmpty()) {
      return true;
    }
    var least = BigDecimal.valueOf(meaning.atLeast);
    boolean large =
        numbers.get(0).value().compareTo(least) >= 0
            && numbers.stream().allMatch(n -> n.value().multiply(TWO).compareTo(least) >= 0);
    int end = hit.match().end();
    boolean percent = line.is(end, "%") || line.is(end, "percent") || line.is(end, "per");
    return large && !(percent && numbers.size() > 1);
  }
}
