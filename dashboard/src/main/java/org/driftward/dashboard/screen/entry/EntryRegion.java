package org.driftward.dashboard.screen.entry;

import java.util.List;

/**
 * One region of the examination.
 *
 * @param id as the catalogue names it
 * @param expected what one touch records, finding by finding; empty where nothing is
 * @param open whether its fields are shown from the start, because most must be measured
 * @param shown whether the region belongs to what the person chose to record
 */
public record EntryRegion(
    String id,
    String title,
    List<EntryRow> rows,
    List<Phrase> expected,
    boolean open,
    boolean shown) {

  /**
   * @param code the finding
   * @param words finding and value, for example {@code Wheeze none}
   * @param count in how many places
   */
  public record Phrase(String code, String words, long count) {}

  public EntryRegion {
    rows = List.copyOf(rows);
    expected = List.copyOf(expected);
  }

  /** How many findings it has, every place counted. */
  public long count() {
    return rows.stream().mapToLong(EntryRow::count).sum();
  }

  /** How many of them one touch records. */
  public long usualCount() {
    return expected.stream().mapToLong(Phrase::count).sum();
  }
}
