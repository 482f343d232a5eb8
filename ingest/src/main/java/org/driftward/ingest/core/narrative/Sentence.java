package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.List;

/**
 * The mentions between two full stops.
 *
 * @param question whether it ends with a question mark
 * @param items mentions, and the commas and colons between them
 */
record Sentence(List<Item> items, boolean question) {

  /**
   * @param mention null for a comma or colon
   * @param token index where it begins
   */
  record Item(Mention mention, int token, boolean comma) {
    boolean is(Cue cue) {
      return mention != null && mention.is(cue);
    }
  }

  static List<Sentence> of(Line line, List<Mention> mentions) {
    var sentences = new ArrayList<Sentence>();
    var items = new ArrayList<Item>();
    int next = 0;
    for (int at = 0; at < line.size(); at++) {
      if (next < mentions.size() && mentions.get(next).first() == at) {
        var mention = mentions.get(next++);
        items.add(new Item(mention, at, false));
        at = mention.end() - 1;
      } else if (line.is(at, "?") && doubts(line, at)) {
        items.add(new Item(Mention.DOUBT, at, false));
      } else if (line.token(at).endsSentence() || line.is(at, ";")) {
        sentences.add(new Sentence(List.copyOf(items), line.is(at, "?")));
        items.clear();
      } else if (line.is(at, ",") || line.is(at, "(") || line.is(at, ")") || line.is(at, "...")) {
        items.add(new Item(null, at, true));
      } else if (line.is(at, ":")) {
        items.add(new Item(null, at, false));
      }
    }
    sentences.add(new Sentence(List.copyOf(items), false));
    return sentences;
  }

  /** "?crackles" asks nobody; it doubts. */
  private static boolean doubts(Line line, int at) {
    return !line.token(at).glued()
        && at + 1 < line.size()
        && line.token(at + 1).glued()
        && line.token(at + 1).isWord();
  }
}
