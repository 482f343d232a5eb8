package org.driftward.scoring.definition;

import java.time.Duration;
import java.util.Map;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.scoring.core.score.Source;

/** Reads the finding that feeds an input and holds it against the catalogue. */
final class SourceReader {

  private static final Map<String, Source.Pick> PICKS =
      Map.of("highest", Source.Pick.HIGHEST, "lowest", Source.Pick.LOWEST);

  private final Catalogue catalogue;
  private final Duration serves;

  /**
   * @param serves how long a reading serves where the file says nothing nearer
   */
  SourceReader(Catalogue catalogue, Duration serves) {
    this.catalogue = catalogue;
    this.serves = serves;
  }

  /** The catalogue's entry that the field names. */
  CatalogueEntry entry(YamlMap map, String field) {
    return entry(map, field, map.text(field));
  }

  CatalogueEntry entry(YamlMap map, String field, String code) {
    return catalogue
        .find(code)
        .orElseThrow(() -> map.fault(field, "the catalogue has no finding " + code));
  }

  boolean known(String code) {
    return catalogue.find(code).isPresent();
  }

  /**
   * The finding with the unit, site rule and validity that {@code map} states for it.
   *
   * @param field the field that names the finding, for faults
   */
  Source read(YamlMap map, String field, CatalogueEntry entry) {
    var unit = map.has("unit") ? map.text("unit") : null;
    if (entry.kind() == Kind.TEXT) {
      throw map.fault(field, entry.code() + " is free text, which is never scored");
    }
    if (entry.unit() == null ? unit != null : !entry.unit().equals(unit)) {
      throw map.fault(
          map.has("unit") ? "unit" : field,
          entry.code()
              + " is recorded in "
              + (entry.unit() == null ? "no unit" : entry.unit())
              + ", not in "
              + (unit == null ? "no unit" : unit));
    }
    boolean sited = entry.sided() || !entry.sites().isEmpty();
    var pick = map.choice("pick", PICKS, Source.Pick.UNSITED);
    if (sited == (pick == Source.Pick.UNSITED)) {
      throw map.fault(
          map.has("pick") ? "pick" : field,
          entry.code()
              + (sited
                  ? " is taken at several sites: pick the highest or the lowest"
                  : " is taken at one site: there is nothing to pick"));
    }
    return new Source(FindingKey.of(entry.code()), unit, pick, map.duration("serves", serves));
  }
}
