package org.driftward.dashboard.screen.entry;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.screen.entry.EntryRegion.Phrase;
import org.driftward.dashboard.screen.entry.EntryRow.Place;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/** Cuts the catalogue into the regions of the examination, in its own order. */
final class Regions {

  /** What must be measured: open from the start, and enough by itself. */
  static final String VITAL_SIGNS = "vital-signs";

  private Regions() {}

  /**
   * @param fields makes each field
   * @param only the region that the person wants to record, or null for all
   */
  static List<EntryRegion> of(Catalogue catalogue, Fields fields, @Nullable String only) {
    Map<String, List<CatalogueEntry>> byRegion = new LinkedHashMap<>();
    catalogue
        .entries()
        .forEach(
            entry -> byRegion.computeIfAbsent(entry.region(), it -> new ArrayList<>()).add(entry));
    var regions = new ArrayList<EntryRegion>();
    byRegion.forEach(
        (id, entries) -> regions.add(region(id, entries, fields, only == null || only.equals(id))));
    return regions;
  }

  private static EntryRegion region(
      String id, List<CatalogueEntry> entries, Fields fields, boolean shown) {
    var rows = entries.stream().map(entry -> row(entry, fields)).toList();
    var phrases = phrases(entries, fields.touch().in(id));
    boolean open = id.equals(VITAL_SIGNS) || (phrases.isEmpty() && entries.size() == 1);
    return new EntryRegion(
        id, Wording.sentence(id), rows, phrases, fields.touch().asked(id), open, shown);
  }

  /** One for each finding and site; both sides are one phrase. */
  private static List<Phrase> phrases(
      List<CatalogueEntry> entries, Map<FindingKey, FindingValue> touch) {
    var names = entries.stream().collect(Collectors.toMap(CatalogueEntry::code, it -> it));
    Map<FindingKey, List<FindingKey>> places = new LinkedHashMap<>();
    touch
        .keySet()
        .forEach(
            key ->
                places
                    .computeIfAbsent(
                        new FindingKey(key.code(), key.site(), null), it -> new ArrayList<>())
                    .add(key));
    var phrases = new ArrayList<Phrase>();
    places.forEach(
        (place, keys) -> {
          var entry = Objects.requireNonNull(names.get(place.code()));
          var value = Wording.value(Scalar.of(touch.get(keys.get(0))), null);
          phrases.add(
              new Phrase(
                  keys.stream().map(FieldName::of).toList(),
                  entry.name() + where(entry, keys) + " " + value));
        });
    return phrases;
  }

  private static String where(CatalogueEntry entry, List<FindingKey> keys) {
    var key = keys.get(0);
    var site = key.site() == null ? "" : ", " + key.site().replace('-', ' ');
    if (!entry.sided()) {
      return site;
    }
    return site + (keys.size() == 2 ? ", both" : ", " + Objects.requireNonNull(key.side()).word());
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
