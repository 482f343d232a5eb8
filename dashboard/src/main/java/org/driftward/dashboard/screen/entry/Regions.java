package org.driftward.dashboard.screen.entry;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.screen.entry.EntryRegion.Phrase;
import org.driftward.dashboard.screen.entry.EntryRow.Place;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/** Cuts the catalogue into the regions of the examination, in its own order. */
final class Regions {

  /** What must be measured: open from the start, and enough by itself. */
  static final String VITAL_SIGNS = "vital-signs";

  /** Recorded only where it applies, as the catalogue's own file says; never by one touch. */
  private static final Set<String> NEVER_BY_ONE_TOUCH = Set.of("special");

  private Regions() {}

  static boolean byOneTouch(String region) {
    return !NEVER_BY_ONE_TOUCH.contains(region);
  }

  /**
   * @param fields makes the fields of a region that one touch may fill, or may not
   * @param only the region that the person wants to record, or null for all
   */
  static List<EntryRegion> of(
      Catalogue catalogue, Function<Boolean, Fields> fields, @Nullable String only) {
    Map<String, List<CatalogueEntry>> byRegion = new LinkedHashMap<>();
    catalogue
        .entries()
        .forEach(
            entry -> byRegion.computeIfAbsent(entry.region(), it -> new ArrayList<>()).add(entry));
    var regions = new ArrayList<EntryRegion>();
    byRegion.forEach(
        (id, entries) ->
            regions.add(
                region(
                    id, entries, fields.apply(byOneTouch(id)), only == null || only.equals(id))));
    return regions;
  }

  private static EntryRegion region(
      String id, List<CatalogueEntry> entries, Fields fields, boolean shown) {
    var rows = entries.stream().map(entry -> row(entry, fields)).toList();
    var phrases = new ArrayList<Phrase>();
    for (int i = 0; i < rows.size(); i++) {
      long count = rows.get(i).usualCount();
      if (count > 0) {
        phrases.add(phrase(entries.get(i), count));
      }
    }
    boolean open = id.equals(VITAL_SIGNS) || (phrases.isEmpty() && entries.size() == 1);
    return new EntryRegion(id, Wording.sentence(id), rows, phrases, open, shown);
  }

  private static Phrase phrase(CatalogueEntry entry, long count) {
    var usual = entry.usual().orElseThrow();
    return new Phrase(
        entry.code(), entry.name() + " " + Wording.value(Scalar.of(usual), null), count);
  }

  private static EntryRow row(CatalogueEntry entry, Fields fields) {
    var places = new ArrayList<Place>();
    if (entry.sites().isEmpty()) {
      places.add(place(entry, null, fields));
    } else {
      entry.sites().forEach(site -> places.add(place(entry, site, fields)));
    }
    var scale =
        entry.scale().entrySet().stream()
            .map(step -> step.getKey() + " " + step.getValue())
            .collect(Collectors.joining(", "));
    return new EntryRow(
        entry.code(),
        entry.name(),
        scale,
        entry.hint() == null ? "" : entry.hint(),
        entry.formula() == null ? "" : entry.formula(),
        places);
  }

  private static Place place(CatalogueEntry entry, @Nullable String site, Fields fields) {
    String title = site == null ? "" : site.replace('-', ' ');
    String spoken = entry.name() + (title.isEmpty() ? "" : ", " + title) + ", ";
    if (entry.sided()) {
      return new Place(
          title,
          List.of(
              fields.field(entry, new FindingKey(entry.code(), site, Side.LEFT), "Left", spoken),
              fields.field(
                  entry, new FindingKey(entry.code(), site, Side.RIGHT), "Right", spoken)));
    }
    var key = new FindingKey(entry.code(), site, null);
    return new Place(
        title,
        List.of(
            site == null
                ? fields.field(entry, key, entry.name(), "")
                : fields.field(entry, key, Wording.sentence(site), entry.name() + ", ")));
  }
}
