package org.driftward.dashboard.screen.codes;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.screen.codes.CodeScreen.Choice;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CodeDesk.Meant;
import org.driftward.ingest.contract.CodeDesk.Seen;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/**
 * What has to be said about a code once its finding is chosen. Only what the finding has is asked.
 *
 * @param finding code of the catalogue
 * @param name of the finding
 * @param sites empty where the finding has none
 * @param sides likewise
 * @param quantity whether it has a unit
 * @param ours its unit in the catalogue, UCUM, or empty
 * @param unit that is meant where a message names none, or empty
 * @param units the words for units that came with the code
 * @param answers the options, each with the sender's words for it
 * @param everyFeed whether it was said for every feed
 */
public record MeaningForm(
    String finding,
    String name,
    List<Choice> sites,
    List<Choice> sides,
    boolean quantity,
    String ours,
    String unit,
    List<UnitWord> units,
    List<Answer> answers,
    boolean everyFeed) {

  /** A sender's word for a unit and its UCUM unit, or empty. */
  public record UnitWord(String word, String ucum) {}

  /**
   * An option of the catalogue.
   *
   * @param said the sender's words for it, a line for each
   */
  public record Answer(String option, String words, String said) {}

  static MeaningForm of(CatalogueEntry entry, Seen seen, @Nullable Meant meant) {
    var before =
        meant != null && meant.finding().equals(entry.code())
            ? meant
            : new Meant(false, entry.code(), null, null, null, Map.of(), Map.of());
    boolean quantity = entry.kind() == Kind.QUANTITY;
    return new MeaningForm(
        entry.code(),
        entry.name(),
        entry.sites().stream()
            .map(site -> new Choice(site, site.replace('-', ' '), site.equals(before.site())))
            .toList(),
        entry.sided()
            ? Arrays.stream(Side.values())
                .map(side -> new Choice(side.word(), side.word(), side == before.side()))
                .toList()
            : List.of(),
        quantity,
        Objects.requireNonNullElse(entry.unit(), ""),
        Objects.requireNonNullElse(before.unit(), ""),
        quantity ? units(seen, before) : List.of(),
        entry.options().stream().map(option -> answer(option, before)).toList(),
        before.everyFeed());
  }

  private static List<UnitWord> units(Seen seen, Meant before) {
    return Stream.concat(seen.units().stream(), before.units().keySet().stream().sorted())
        .distinct()
        .map(word -> new UnitWord(word, before.units().getOrDefault(word, "")))
        .toList();
  }

  private static Answer answer(String option, Meant before) {
    var said =
        before.values().entrySet().stream()
            .filter(each -> each.getValue().equals(option))
            .map(Map.Entry::getKey)
            .sorted()
            .collect(Collectors.joining("\n"));
    return new Answer(option, Wording.sentence(option), said);
  }
}
