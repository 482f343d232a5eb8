package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Phrases with their meanings, found by the words they can begin with; the longest counts. */
final class Lexicon {

  private record Entry(Phrase phrase, Meaning meaning) {}

  /** The longest phrase at a place. */
  record Hit(Phrase.Match match, Meaning meaning) {}

  private final Tokeniser tokeniser;
  private final Map<String, Entry> written = new LinkedHashMap<>();
  private final Map<String, List<Entry>> byBeginning = new HashMap<>();

  Lexicon(Tokeniser tokeniser) {
    this.tokeniser = tokeniser;
  }

  /** Adds to what the phrase means already. */
  void add(String phrase, Consumer<Meaning> meaning) {
    var key = String.join(" ", phrase.trim().split("\\s+", -1));
    var entry =
        written.computeIfAbsent(
            key,
            words -> {
              var made = new Entry(new Phrase(words, tokeniser), new Meaning());
              for (var beginning : made.phrase().beginnings()) {
                byBeginning.computeIfAbsent(beginning, b -> new ArrayList<>()).add(made);
              }
              return made;
            });
    meaning.accept(entry.meaning());
  }

  /** Null where no phrase begins. Phrases of the same words add up. */
  @Nullable Hit at(Line line, int at) {
    var best = longest(line, at, line.token(at).text(), null);
    var text = line.token(at).text();
    if (text.length() > 3 && text.endsWith("s")) {
      best = longest(line, at, text.substring(0, text.length() - 1), best);
      if (text.endsWith("es")) {
        best = longest(line, at, text.substring(0, text.length() - 2), best);
      }
    }
    return line.numeral(at) == null ? best : longest(line, at, "#", best);
  }

  private @Nullable Hit longest(Line line, int at, String beginning, @Nullable Hit known) {
    var best = known;
    for (var entry : byBeginning.getOrDefault(beginning, List.of())) {
      var match = entry.phrase().at(line, at);
      if (match == null) {
        continue;
      }
      int order = best == null ? 1 : Integer.compare(match.end(), best.match().end());
      if (order > 0) {
        best = new Hit(match, entry.meaning());
      } else if (order == 0 && best.meaning() != entry.meaning()) {
        best = new Hit(match, Meaning.both(best.meaning(), entry.meaning()));
      }
    }
    return best;
  }
}
