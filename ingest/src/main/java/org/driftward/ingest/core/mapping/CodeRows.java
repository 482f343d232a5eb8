package org.driftward.ingest.core.mapping;

import java.util.List;
import java.util.Map;

/**
 * A mapping as a person writes it. A file leaves an empty list out.
 *
 * @param codes what is observed
 * @param units UCUM unit by the word that feeds use for it; words count in their exact spelling
 * @param answers answers that have a code of their own
 * @param panels codes that only hold others together
 */
public record CodeRows(
    List<CodeRow> codes,
    Map<String, String> units,
    List<AnswerRow> answers,
    List<PanelRow> panels) {

  public static final CodeRows NONE = of(List.of());

  /** The option of a finding that a coded answer means. */
  public record AnswerRow(String system, String code, String finding, String option) {}

  /** A code that carries no value itself. */
  public record PanelRow(String system, String code) {}

  public CodeRows {
    codes = codes == null ? List.of() : List.copyOf(codes);
    units = units == null ? Map.of() : Map.copyOf(units);
    answers = answers == null ? List.of() : List.copyOf(answers);
    panels = panels == null ? List.of() : List.copyOf(panels);
  }

  public static CodeRows of(List<CodeRow> codes) {
    return new CodeRows(codes, Map.of(), List.of(), List.of());
  }
}
