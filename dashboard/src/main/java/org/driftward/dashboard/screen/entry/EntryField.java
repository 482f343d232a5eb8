package org.driftward.dashboard.screen.entry;

import java.util.List;

/**
 * One field: a finding at one place of the body.
 *
 * @param name of the field in the form
 * @param label what is written on it: the finding, the side, or nothing but the place
 * @param spoken what a screen reader adds before the label, so that the field is clear by itself
 * @param unit as a ward writes it; empty where there is none
 * @param ucum the catalogue's unit; empty where there is none
 * @param low least accepted number, or empty
 * @param high greatest accepted number, or empty
 * @param expectedLow least expected number, or empty
 * @param expectedHigh greatest expected number, or empty
 * @param options of a choice, best first where the catalogue orders them; else empty
 * @param usual the value that one touch records; empty where there is none
 * @param before the last value, its time and who took it; empty before the first
 * @param value of the assessment that is being corrected; empty in a new one
 * @param next whether Next leads here from the field before
 */
public record EntryField(
    String name,
    Kind kind,
    String label,
    String spoken,
    String unit,
    String ucum,
    String low,
    String high,
    String expectedLow,
    String expectedHigh,
    List<EntryOption> options,
    String usual,
    String before,
    String value,
    boolean next) {

  /** How a value is entered, and what the topic contract calls it. */
  public enum Kind {
    /** A decimal number with a unit. */
    VALUE,
    /** One of a few grades. */
    GRADE,
    /** A grade of a scale too long for touch targets. */
    GRADE_NUMBER,
    CODED,
    TEXT;

    /** Name of the field of a finding in the JSON of the topic contract. */
    public String json() {
      return switch (this) {
        case VALUE -> "value";
        case GRADE, GRADE_NUMBER -> "grade";
        case CODED -> "coded";
        case TEXT -> "text";
      };
    }
  }

  public EntryField {
    options = List.copyOf(options);
  }

  public boolean choice() {
    return kind == Kind.GRADE || kind == Kind.CODED;
  }

  public boolean number() {
    return kind == Kind.VALUE || kind == Kind.GRADE_NUMBER;
  }

  public boolean text() {
    return kind == Kind.TEXT;
  }

  public String json() {
    return kind.json();
  }

  /** Says nothing about the patient. */
  @Override
  public String toString() {
    return "EntryField[" + name + "]";
  }
}
