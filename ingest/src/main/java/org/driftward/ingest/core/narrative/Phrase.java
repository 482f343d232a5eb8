package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A pattern of words as the files write it: {@code a|b} is one of several words, {@code a?} may be
 * missing, {@code ..} is up to three words of any kind, {@code #} a number. A word also matches its
 * plural.
 */
final class Phrase {

  private static final int MOST_SKIPPED = 3;
  private static final int SHORTEST_WITH_PLURAL = 3;

  /**
   * @param longer alternatives of several tokens: {@code o2}
   */
  private record Part(
      Set<String> words,
      List<List<String>> longer,
      boolean optional,
      boolean gap,
      boolean number) {}

  /**
   * @param end exclusive
   * @param plural whether one of the words stood in the plural
   * @param numbers in the places of {@code #}
   */
  record Match(int end, boolean plural, List<Numeral> numbers) {}

  private final List<Part> parts = new ArrayList<>();

  Phrase(String written, Tokeniser tokeniser) {
    for (var word : written.trim().split("\\s+", -1)) {
      boolean optional = word.length() > 1 && word.endsWith("?");
      var bare = optional ? word.substring(0, word.length() - 1) : word;
      if (bare.equals("..") || bare.equals("#")) {
        parts.add(new Part(Set.of(), List.of(), optional, bare.equals(".."), bare.equals("#")));
      } else if (bare.indexOf('|') > 0) {
        parts.add(alternatives(bare, optional, tokeniser));
      } else {
        for (var token : tokeniser.tokens(bare)) {
          parts.add(new Part(Set.of(token.text()), List.of(), optional, false, false));
        }
      }
    }
    if (parts.isEmpty() || parts.get(0).gap()) {
      throw new IllegalArgumentException("a phrase must begin with a word: \"" + written + "\"");
    }
  }

  private static Part alternatives(String words, boolean optional, Tokeniser tokeniser) {
    var single = new HashSet<String>();
    var longer = new ArrayList<List<String>>();
    for (var word : words.split("\\|", -1)) {
      var tokens = tokeniser.tokens(word).stream().map(Token::text).toList();
      if (tokens.size() == 1) {
        single.add(tokens.get(0));
      } else {
        longer.add(tokens);
      }
    }
    return new Part(Set.copyOf(single), List.copyOf(longer), optional, false, false);
  }

  /** The words it can begin with; {@code #} where it can begin with a number. */
  List<String> beginnings() {
    var words = new ArrayList<String>();
    for (var part : parts) {
      words.addAll(part.number() ? Set.of("#") : part.words());
      part.longer().forEach(tokens -> words.add(tokens.get(0)));
      if (!part.optional()) {
        break;
      }
    }
    return words;
  }

  /** Null where it does not begin at that token. */
  Match at(Line line, int from) {
    return match(line, from, 0, false, List.of());
  }

  private Match match(Line line, int at, int index, boolean plural, List<Numeral> numbers) {
    if (index == parts.size()) {
      return new Match(at, plural, numbers);
    }
    var part = parts.get(index);
    Match found = null;
    if (part.gap()) {
      for (int skip = 0; skip <= MOST_SKIPPED && found == null; skip++) {
        if (skip > 0 && !line.skippable(at + skip - 1)) {
          break;
        }
        found = match(line, at + skip, index + 1, plural, numbers);
      }
      return found;
    }
    if (at < line.size()) {
      if (part.number()) {
        var number = line.numeral(at);
        if (number != null) {
          var more = new ArrayList<>(numbers);
          more.add(number);
          found = match(line, number.end(), index + 1, plural, more);
        }
      } else {
        var text = line.token(at).text();
        if (part.words().contains(text)) {
          found = match(line, at + 1, index + 1, plural, numbers);
        } else if (singular(part, text)) {
          found = match(line, at + 1, index + 1, true, numbers);
        }
        for (var tokens : part.longer()) {
          if (found == null && line.reads(at, tokens)) {
            found = match(line, at + tokens.size(), index + 1, plural, numbers);
          }
        }
      }
    }
    return found == null && part.optional() ? match(line, at, index + 1, plural, numbers) : found;
  }

  private static boolean singular(Part part, String text) {
    int length = text.length();
    return length > SHORTEST_WITH_PLURAL
        && text.charAt(length - 1) == 's'
        && (part.words().contains(text.substring(0, length - 1))
            || (text.endsWith("es") && part.words().contains(text.substring(0, length - 2))));
  }
}
