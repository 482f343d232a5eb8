package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.Word;
import org.driftward.ingest.core.narrative.Meaning.Option;

/** All phrases with their meanings, put together from catalogue, words and grammar. */
final class Vocabulary {

  private static final List<String> DENIED = List.of("none", "absent", "not-felt", "impalpable");

  private final Map<String, CatalogueEntry> entries = new LinkedHashMap<>();
  private final Map<String, Wording> wordings = new LinkedHashMap<>();
  private final Tokeniser tokeniser;
  private final Lexicon phrases;
  private final Lexicon units;
  private final NumberReader numbers;

  /**
   * @throws IllegalArgumentException naming the entry if words are for a finding, an option or a
   *     site that the catalogue does not know
   */
  Vocabulary(Catalogue catalogue, List<Wording> words, Grammar grammar) {
    tokeniser = new Tokeniser(grammar.spellings());
    phrases = new Lexicon(tokeniser);
    units = new Lexicon(tokeniser);
    numbers = new NumberReader(grammar.numbers(), grammar.misheard());
    catalogue.entries().stream()
        .filter(entry -> !entry.region().equals("note"))
        .forEach(entry -> entries.put(entry.code(), entry));
    for (var wording : words) {
      if (!entries.containsKey(wording.code()) || wordings.put(wording.code(), wording) != null) {
        throw new IllegalArgumentException(
            wording.code() + " is unknown to the catalogue or has words already");
      }
    }
    entries.keySet().forEach(code -> wordings.putIfAbsent(code, Wording.none(code)));
    entries.values().forEach(entry -> own(entry, wordings.get(entry.code())));
    entries.values().forEach(entry -> general(entry, grammar));
    shared(grammar);
  }

  CatalogueEntry entry(String code) {
    return entries.get(code);
  }

  Wording wording(String code) {
    return wordings.get(code);
  }

  Lexicon phrases() {
    return phrases;
  }

  AmountReader amounts() {
    return new AmountReader(units);
  }

  Line line(String text) {
    return new Line(tokeniser.tokens(text), numbers);
  }

  /** What a denial of the finding says, if it says anything. */
  Optional<FindingValue> denied(String code) {
    var entry = entry(code);
    var own = wording(code).denied();
    if (own != null) {
      return own.isEmpty() ? Optional.empty() : Optional.of(value(entry, own));
    }
    if (entry.kind() == Kind.GRADE) {
      return entry.accepted().low().signum() == 0
          ? Optional.of(new FindingValue.Grade(0))
          : Optional.empty();
    }
    return DENIED.stream()
        .filter(entry.options()::contains)
        .findFirst()
        .map(FindingValue.Coded::new);
  }

  private void own(CatalogueEntry entry, Wording wording) {
    var code = entry.code();
    name(entry.name().toLowerCase(Locale.ROOT).replaceAll("[:,]", " "), m -> m.named.add(code));
    wording.named().forEach(phrase -> name(phrase, m -> m.named.add(code)));
    wording.about().forEach(phrase -> name(phrase, m -> m.about.add(code)));
    wording.asked().forEach(phrase -> name(phrase, m -> m.asked.add(code)));
    wording.picked().forEach(phrase -> phrases.add(phrase, m -> m.aspects.add(code)));
    values(entry, wording.values(), false);
    values(entry, wording.said(), true);
  }

  private void values(CatalogueEntry entry, Map<String, List<String>> said, boolean alone) {
    said.forEach(
        (option, words) -> {
          var value = value(entry, option);
          for (var phrase : words) {
            if (phrase.equals("-")) {
              continue;
            }
            name(phrase, m -> m.options.add(new Option(entry.code(), value, alone, false)));
          }
        });
  }

  /** A phrase with the site that it implies: {@code squeeze .. hands @hand}. */
  private void name(String written, Consumer<Meaning> meaning) {
    var parts = written.split("@", -1);
    phrases.add(
        parts[0],
        m -> {
          meaning.accept(m);
          for (int i = 1; i < parts.length; i++) {
            m.sites.add(parts[i].trim());
          }
        });
  }

  private void general(CatalogueEntry entry, Grammar grammar) {
    var wording = wording(entry.code());
    for (var option : entry.options()) {
      var words = new ArrayList<>(grammar.options().getOrDefault(option, List.of()));
      if (!wording.hides(option) && !DENIED.contains(option)) {
        words.add(option.replace('-', ' '));
      }
      var meant = new Option(entry.code(), new FindingValue.Coded(option), false, true);
      words.forEach(phrase -> phrases.add(phrase, m -> m.options.add(meant)));
    }
    entry
        .usual()
        .ifPresent(
            usual ->
                grammar
                    .usual()
                    .forEach(
                        phrase ->
                            phrases.add(
                                phrase,
                                m -> m.options.add(new Option(entry.code(), usual, false, true)))));
  }

  private void shared(Grammar grammar) {
    grammar.units().forEach((unit, says) -> says.forEach(p -> units.add(p, m -> m.unit = unit)));
    grammar
        .sides()
        .forEach(
            (side, says) -> {
              var sides =
                  side.equals("both")
                      ? List.of(Side.LEFT, Side.RIGHT)
                      : List.of(Word.parse(Side.class, side));
              says.forEach(phrase -> phrases.add(phrase, m -> m.sides.addAll(sides)));
            });
    for (var place : grammar.places()) {
      place.says().forEach(phrase -> phrases.add(phrase, m -> m.sites.addAll(place.sites())));
    }
    grammar
        .cues()
        .forEach(
            (cue, says) -> {
              var meant = Word.parse(Cue.class, cue);
              says.forEach(phrase -> phrases.add(phrase, m -> m.cues.add(meant)));
            });
    grammar
        .regions()
        .forEach(
            (region, says) ->
                entries.values().stream()
                    .filter(entry -> entry.region().equals(region))
                    .forEach(
                        entry ->
                            says.forEach(
                                phrase -> phrases.add(phrase, m -> m.section.add(entry.code())))));
    for (var group : grammar.numbersTogether()) {
      group
          .says()
          .forEach(
              phrase ->
                  phrases.add(
                      phrase,
                      m -> {
                        m.numbers.addAll(group.codes());
                        m.atLeast = group.atLeast() == null ? 0 : group.atLeast();
                      }));
    }
    for (var group : grammar.together()) {
      for (var phrase : group.says()) {
        group
            .findings()
            .forEach(
                (code, option) -> {
                  var value = value(entry(code), option);
                  phrases.add(phrase, m -> m.options.add(new Option(code, value, true, false)));
                });
      }
    }
  }

  /** An option, a grade or a number as a file writes it. */
  private static FindingValue value(CatalogueEntry entry, String written) {
    return switch (entry.kind()) {
      case GRADE -> new FindingValue.Grade(Integer.parseInt(written));
      case QUANTITY -> new FindingValue.Quantity(new java.math.BigDecimal(written), entry.unit());
      case TEXT -> new FindingValue.Text(written);
      case CODED -> {
        if (!entry.options().contains(written)) {
          throw new IllegalArgumentException(entry.code() + " has no option " + written);
        }
        yield new FindingValue.Coded(written);
      }
    };
  }
}
