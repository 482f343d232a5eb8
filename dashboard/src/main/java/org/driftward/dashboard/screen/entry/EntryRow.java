package org.driftward.dashboard.screen.entry;

import java.util.List;

/**
 * One finding with every place it is taken at.
 *
 * @param scale what the grades mean, or empty
 * @param hint how to examine, or empty
 * @param formula how it is computed from others, or empty: then measuring it is the exception
 * @param places one without title where the finding has no sites
 */
public record EntryRow(
    String code, String title, String scale, String hint, String formula, List<Place> places) {

  /**
   * @param fields left then right where the finding has sides, else one
   */
  public record Place(String title, List<EntryField> fields) {
    public Place {
      fields = List.copyOf(fields);
    }
  }

  public EntryRow {
    places = List.copyOf(places);
  }

  /** Whether it is a single field without place or side. */
  public boolean single() {
    return places.size() == 1 && places.get(0).fields().size() == 1;
  }

  public EntryField only() {
    return places.get(0).fields().get(0);
  }

  public boolean derived() {
    return !formula.isEmpty();
  }

  public long count() {
    return places.stream().mapToLong(place -> place.fields().size()).sum();
  }
}
