package org.driftward.dashboard.screen;

import org.jspecify.annotations.Nullable;

/**
 * A patient's name with the surname set apart.
 *
 * @param given empty where the source gives none
 */
public record PersonName(String surname, String given) {

  /** Splits {@code Family, Given names} at the first comma. */
  public static PersonName of(@Nullable String name) {
    if (name == null || name.isBlank()) {
      return new PersonName("Name unknown", "");
    }
    int comma = name.indexOf(',');
    return comma < 0
        ? new PersonName(name.strip(), "")
        : new PersonName(name.substring(0, comma).strip(), name.substring(comma + 1).strip());
  }

  /** Says nothing about the person. */
  @Override
  public String toString() {
    return "PersonName[redacted]";
  }
}
