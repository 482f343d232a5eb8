package org.driftward.ingest.core.mapping;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.jspecify.annotations.Nullable;

/** A mapping in memory, every row checked against the catalogue. Immutable, thread-safe. */
public final class CodeTable implements CodeMap {

  /** Names of LOINC in HL7 v2 (table 0396) and in FHIR. */
  public static final List<String> LOINC = List.of("LN", "http://loinc.org");

  /** Our own coding system: the code is the catalogue's, an answer is the option's. */
  public static final List<String> OURS = List.of("99DRIFTWARD", "urn:driftward:finding");

  /** A null source stands for every feed. */
  private record Key(@Nullable String source, String system, String code) {}

  private final Map<Key, Meaning> meanings = new HashMap<>();
  private final Map<String, String> units;

  private CodeTable(Map<String, String> units) {
    this.units = Map.copyOf(units);
  }

  /** What the catalogue says by itself: its LOINC codes, and its own codes. */
  public static CodeTable of(Catalogue catalogue) {
    var table = new CodeTable(Map.of());
    for (var entry : catalogue.entries()) {
      var meaning = Meaning.of(entry.code());
      OURS.forEach(system -> table.meanings.put(new Key(null, system, entry.code()), meaning));
      if (entry.loinc() != null) {
        LOINC.forEach(system -> table.meanings.put(new Key(null, system, entry.loinc()), meaning));
      }
    }
    return table;
  }

  /**
   * @param units UCUM unit by the word that feeds use for it; words count in their exact spelling
   * @throws IllegalArgumentException naming the row that the catalogue contradicts, or that says
   *     again what another says
   */
  public static CodeTable of(Catalogue catalogue, List<CodeRow> rows, Map<String, String> units) {
    var table = new CodeTable(units);
    for (var row : rows) {
      check(row, catalogue);
      var key = new Key(row.source(), row.system() == null ? "" : row.system(), row.code());
      if (table.meanings.putIfAbsent(key, row.meaning()) != null) {
        throw broken(row, "is mapped twice");
      }
    }
    return table;
  }

  /** What one feed says of a code goes before what all say. */
  @Override
  public Optional<Meaning> find(ForeignCode code) {
    var own = meanings.get(new Key(code.source(), code.system(), code.code()));
    return Optional.ofNullable(
        own != null ? own : meanings.get(new Key(null, code.system(), code.code())));
  }

  @Override
  public Optional<String> unit(String word) {
    return Optional.ofNullable(units.get(word));
  }

  private static void check(CodeRow row, Catalogue catalogue) {
    var entry =
        catalogue
            .find(row.finding())
            .orElseThrow(() -> broken(row, "means " + row.finding() + ", which nobody knows"));
    if (row.site() != null && !entry.sites().contains(row.site())) {
      throw broken(row, "has site " + row.site() + ", none of " + entry.sites());
    }
    if (row.side() != null && !entry.sided()) {
      throw broken(row, "has a side, and " + entry.code() + " has none");
    }
    if (row.unit() != null && entry.kind() != CatalogueEntry.Kind.QUANTITY) {
      throw broken(row, "has a unit, and " + entry.code() + " has none");
    }
    row.meaning().values().values().stream()
        .filter(option -> !entry.options().contains(option))
        .findFirst()
        .ifPresent(
            option -> {
              throw broken(row, "has the answer " + option + ", none of " + entry.options());
            });
  }

  private static IllegalArgumentException broken(CodeRow row, String why) {
    return new IllegalArgumentException("code " + row.code() + " " + why);
  }
}
