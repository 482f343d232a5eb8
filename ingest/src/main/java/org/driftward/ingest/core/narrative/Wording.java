package org.driftward.ingest.core.narrative;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The words of one finding, as its file writes them. Names and options of the catalogue are words
 * by themselves and need no mention here.
 *
 * @param code of the catalogue
 * @param named what it is called; a phrase may end with {@code @site}
 * @param about what is spoken of where its values are said without its name
 * @param asked questions and instructions to the patient that test it
 * @param values words of an option, grade or number that need its name nearby
 * @param said words that say an option or grade by themselves
 * @param picked words that pick this one of several findings with one name: "on movement"
 * @param mentioned the option that the name alone says; null where it says none
 * @param denied the option that a denial says; null where it follows from the options
 * @param everywhere whether it is said of all places where none is named
 * @param unit whether a number counts only with its unit
 * @param others whether it is said of other people than the patient
 * @param implies option of another finding that every value but the usual one says, too
 */
public record Wording(
    String code,
    List<String> named,
    List<String> about,
    List<String> asked,
    Map<String, List<String>> values,
    Map<String, List<String>> said,
    List<String> picked,
    @Nullable String mentioned,
    @Nullable String denied,
    boolean everywhere,
    boolean unit,
    Map<String, String> implies,
    boolean others) {

  public Wording {
    named = list(named);
    about = list(about);
    asked = list(asked);
    picked = list(picked);
    values = values == null ? Map.of() : values;
    implies = implies == null ? Map.of() : implies;
    said = said == null ? Map.of() : said;
  }

  static Wording none(String code) {
    return new Wording(
        code, List.of(), List.of(), List.of(), Map.of(), Map.of(), List.of(), null, null, false,
        false, Map.of(), false);
  }

  /** A lone hyphen says that the option's own name does not say it. */
  boolean hides(String option) {
    return values.getOrDefault(option, List.of()).contains("-");
  }

  private static List<String> list(@Nullable List<String> list) {
    return list == null ? List.of() : list;
  }
}
