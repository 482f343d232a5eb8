package org.driftward.ingest.core.narrative;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;

/** At which places a value of a finding holds, from what was said of places. */
final class Spread {

  private static final Set<Side> BOTH = EnumSet.allOf(Side.class);

  private Spread() {}

  /**
   * @param everywhere whether all places are meant where none is said
   * @param pair whether both sides are meant where none is said
   * @param before the places of the statement before; empty where they do not carry over
   * @return empty where a place is needed and none was said
   */
  static List<FindingKey> keys(
      CatalogueEntry entry,
      List<Place> said,
      boolean everywhere,
      boolean pair,
      List<Place> before) {
    var keys = new LinkedHashSet<FindingKey>();
    var places = Place.joined(said);
    if (entry.sites().isEmpty()) {
      if (!entry.sided()) {
        return List.of(FindingKey.of(entry.code()));
      }
      var sides = EnumSet.noneOf(Side.class);
      places.forEach(place -> sides.addAll(place.sides()));
      boolean plural = places.stream().anyMatch(Place::plural);
      for (var side : sides.isEmpty() ? orBoth(pair || plural, before) : sides) {
        keys.add(new FindingKey(entry.code(), null, side));
      }
      return List.copyOf(keys);
    }
    var fitting = places.stream().filter(place -> fits(entry, place)).toList();
    if (fitting.isEmpty()) {
      var sides = EnumSet.noneOf(Side.class);
      places.forEach(place -> sides.addAll(place.sides()));
      var earlier = Place.joined(before).stream().filter(place -> fits(entry, place)).toList();
      if (!earlier.isEmpty()) {
        fitting = withSides(earlier, sides);
      } else if (everywhere) {
        fitting = List.of(new Place(new LinkedHashSet<>(entry.sites()), sides, sides.isEmpty()));
      }
    }
    for (var place : fitting) {
      var sides = place.sides().isEmpty() ? orBoth(pair || place.plural(), before) : place.sides();
      for (var site : entry.sites()) {
        if (place.sites().contains(site)) {
          if (entry.sided()) {
            sides.forEach(side -> keys.add(new FindingKey(entry.code(), site, side)));
          } else {
            keys.add(new FindingKey(entry.code(), site, null));
          }
        }
      }
    }
    return List.copyOf(keys);
  }

  static boolean fits(CatalogueEntry entry, Place place) {
    return entry.sites().stream().anyMatch(place.sites()::contains);
  }

  private static List<Place> withSides(List<Place> places, Set<Side> sides) {
    var all = new ArrayList<Place>();
    for (var place : places) {
      all.add(sides.isEmpty() ? place : new Place(place.sites(), sides, false));
    }
    return all;
  }

  /** Without a word of a side: both of a pair, or the one side that was spoken of before. */
  private static Set<Side> orBoth(boolean pair, List<Place> before) {
    if (pair) {
      return BOTH;
    }
    var sides = EnumSet.noneOf(Side.class);
    before.forEach(place -> sides.addAll(place.sides()));
    return sides.size() == 1 ? sides : EnumSet.noneOf(Side.class);
  }
}
