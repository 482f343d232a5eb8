package org.driftward.dashboard.screen.entry;

import java.util.List;

/**
 * One region of the examination.
 *
 * @param id as the catalogue names it
 * @param expected what one touch records, finding by finding; empty where nothing is
 * @param asked what one touch leaves out for this patient, and why, in words
 * @param open whether its fields are shown from the start, because most must be measured
 * @param shown whether the region belongs to what the person chose to record
 */
public record EntryRegion(
    String id,
    String title,
    List<EntryRow> rows,
    List<Phrase> expected,
    List<String> asked,
    boolean open,
    boolean shown) {

  /**
   * @param fields names of the fields that it fills
   * @param words finding, place and value, for example {@code Sclera, both white}
   */
  public record Phrase(List<String> fields, String words) {
    public Phrase {
      fields = List.copyOf(fields);
    }

    public String names() {
      return String.join(" ", fields);
    }
  }

  public EntryRegion {
    rows = List.copyOf(rows);
    expected = List.copyOf(expected);
    asked = List.copyOf(asked);
  }

  /** How many findings it has, every place counted. */
  public long count() {
    return rows.stream().mapToLong(EntryRow::count).sum();
  }

  /** How many of them one touch records. */
  public long usualCount() {
    return expected.stream().mapToLong(phrase -> phrase.fields().size()).sum();
  }
}
