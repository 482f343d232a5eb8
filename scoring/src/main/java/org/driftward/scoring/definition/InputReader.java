package org.driftward.scoring.definition;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.scoring.core.score.Combined;
import org.driftward.scoring.core.score.Input;
import org.driftward.scoring.core.score.Measure;
import org.driftward.scoring.core.score.NewestOf;
import org.driftward.scoring.core.score.Output;
import org.driftward.scoring.core.score.Recorded;
import org.driftward.scoring.core.score.Resolution;
import org.driftward.scoring.core.score.Rule;
import org.driftward.scoring.core.score.Source;
import org.driftward.scoring.core.score.Span;
import org.jspecify.annotations.Nullable;

/** Reads one entry of {@code inputs}. */
final class InputReader {

  private static final Map<String, RoundingMode> MODES =
      Map.of("half-away", RoundingMode.HALF_UP, "down", RoundingMode.FLOOR);

  private final SourceReader sources;

  InputReader(SourceReader sources) {
    this.sources = sources;
  }

  Input read(YamlMap map, int place) {
    var code = map.text("code");
    var resolution = resolution(map);
    Input input;
    if (map.has("combined")) {
      input = input(map, place, code, resolution, List.of(), combined(map.map("combined")));
    } else if (map.has("newest-of")) {
      var words = map.texts("words");
      input = input(map, place, code, resolution, words, newest(map, code, words));
    } else if (map.has("output")) {
      input = input(map, place, code, resolution, List.of(), output(map.map("output")));
    } else {
      var field = map.has("finding") ? "finding" : "code";
      var entry = sources.entry(map, field);
      var measure = new Recorded(sources.read(map, field, entry));
      input = input(map, place, code, resolution, entry.options(), measure);
    }
    map.done();
    return input;
  }

  private static Input input(
      YamlMap map,
      int place,
      String code,
      Resolution resolution,
      List<String> words,
      Measure measure) {
    try {
      var unit = map.has("unit") ? map.text("unit") : null;
      return new Input(place, code, unit, resolution, words, measure);
    } catch (IllegalArgumentException e) {
      throw map.fault(e.getMessage());
    }
  }

  private static Resolution resolution(YamlMap map) {
    try {
      return new Resolution(
          map.whole("digits", 0), map.choice("round", MODES, RoundingMode.HALF_UP));
    } catch (IllegalArgumentException e) {
      throw map.fault("digits", e.getMessage());
    }
  }

  private Combined combined(YamlMap map) {
    var terms = new ArrayList<Combined.Term>();
    for (var term : map.maps("terms")) {
      var source = number(term, "finding", sources.entry(term, "finding"));
      terms.add(
          new Combined.Term(source, term.has("weight") ? term.number("weight") : BigDecimal.ONE));
      term.done();
    }
    var divisor = map.has("divisor") ? map.number("divisor") : BigDecimal.ONE;
    var formula = map.text("formula");
    map.done();
    try {
      return new Combined(terms, divisor, formula);
    } catch (IllegalArgumentException e) {
      throw map.fault(e.getMessage());
    }
  }

  private Output output(YamlMap map) {
    var volume = number(map, "finding", sources.entry(map, "finding"));
    var period = companion(map, "period");
    var weight = companion(map, "per");
    Duration over = map.duration("over");
    map.done();
    try {
      return new Output(volume, over, period, weight);
    } catch (IllegalArgumentException e) {
      throw map.fault("over", e.getMessage());
    }
  }

  private @Nullable Source companion(YamlMap map, String field) {
    if (!map.has(field)) {
      return null;
    }
    var companion = map.map(field);
    var source = number(companion, "finding", sources.entry(companion, "finding"));
    companion.done();
    return source;
  }

  private NewestOf newest(YamlMap map, String code, List<String> words) {
    var rules = new ArrayList<Rule>();
    for (var rule : map.maps("newest-of")) {
      rules.add(rule(rule, words));
      rule.done();
    }
    var ask = sources.entry(map, "ask", map.text("ask", code)).code();
    return new NewestOf(rules, ask);
  }

  private Rule rule(YamlMap map, List<String> words) {
    var entries =
        map.has("sum")
            ? map.texts("sum").stream().map(code -> sources.entry(map, "sum", code)).toList()
            : List.of(sources.entry(map, "finding"));
    var field = map.has("sum") ? "sum" : "finding";
    boolean spoken = !map.has("sum") && entries.get(0).kind() == Kind.CODED;
    var read =
        entries.stream()
            .map(entry -> spoken ? sources.read(map, field, entry) : number(map, field, entry))
            .toList();
    int gives = gives(map, spoken ? entries.get(0) : null, words);
    if (!spoken) {
      return new Rule(read, Spans.read(map), Set.of(), gives);
    }
    var is = map.has("is") ? map.texts("is") : entries.get(0).options();
    is.stream()
        .filter(word -> !entries.get(0).options().contains(word))
        .findFirst()
        .ifPresent(
            word -> {
              throw map.fault("is", entries.get(0).code() + " is never \"" + word + "\"");
            });
    return new Rule(read, Span.ALL, Set.copyOf(is), gives);
  }

  /** The place of the word that a rule concludes. */
  private static int gives(YamlMap map, @Nullable CatalogueEntry spoken, List<String> words) {
    if (map.text("ask", "false").equals("true")) {
      return Rule.ASK;
    }
    if (map.has("gives")) {
      int place = words.indexOf(map.text("gives"));
      if (place < 0) {
        throw map.fault("gives", "\"" + map.text("gives") + "\" is none of " + words);
      }
      return place;
    }
    if (spoken == null || !words.containsAll(spoken.options())) {
      throw map.fault("the rule says neither what it gives nor to ask");
    }
    return Rule.AS_RECORDED;
  }

  private Source number(YamlMap map, String field, CatalogueEntry entry) {
    if (Stream.of(Kind.QUANTITY, Kind.GRADE).noneMatch(entry.kind()::equals)) {
      throw map.fault(field, entry.code() + " is not a number");
    }
    return sources.read(map, field, entry);
  }
}
