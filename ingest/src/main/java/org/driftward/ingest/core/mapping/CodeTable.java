package org.driftward.ingest.core.mapping;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CodeSystem;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.core.mapping.CodeRows.PanelRow;
import org.jspecify.annotations.Nullable;

/** A mapping in memory, every row checked against the catalogue. Immutable, thread-safe. */
public final class CodeTable implements CodeMap {

  /** A null source stands for every feed; the system is FHIR's name for it. */
  private record Key(@Nullable String source, String system, String code) {
    static Key of(@Nullable String source, @Nullable String system, String code) {
      return new Key(source, system == null ? "" : Systems.inFhir(system), code);
    }
  }

  private record Answer(String system, String code, String finding) {}

  private final Map<Key, Meaning> meanings = new HashMap<>();
  private final Map<Answer, String> answers = new HashMap<>();
  private final Set<PanelRow> panels = new HashSet<>();
  private final Map<String, String> units;

  private CodeTable(Map<String, String> units) {
    this.units = Map.copyOf(units);
  }

  /** What the catalogue says by itself: its LOINC codes, and its own codes. */
  public static CodeTable of(Catalogue catalogue) {
    var table = new CodeTable(Map.of());
    for (var entry : catalogue.entries()) {
      var meaning = Meaning.of(entry.code());
      table.meanings.put(Key.of(null, CodeSystem.FINDING, entry.code()), meaning);
      if (entry.loinc() != null) {
        table.meanings.put(Key.of(null, CodeSystem.LOINC, entry.loinc()), meaning);
      }
    }
    return table;
  }

  /**
   * @throws IllegalArgumentException naming the row that the catalogue contradicts, or that says
   *     again what another says
   */
  public static CodeTable of(CodeRules rules, CodeRows rows) {
    var table = new CodeTable(rows.units());
    for (var row : rows.codes()) {
      rules.fault(row).ifPresent(CodeTable::refuse);
      var key = Key.of(row.source(), row.system(), row.code());
      if (table.meanings.putIfAbsent(key, Meaning.of(row)) != null) {
        refuse("code " + row.code() + " is mapped twice");
      }
    }
    for (var row : rows.answers()) {
      rules.fault(row).ifPresent(CodeTable::refuse);
      var key = new Answer(Systems.inFhir(row.system()), row.code(), row.finding());
      if (table.answers.putIfAbsent(key, row.option()) != null) {
        refuse("answer " + row.code() + " is mapped twice");
      }
    }
    for (var row : rows.panels()) {
      table.panels.add(new PanelRow(Systems.inFhir(row.system()), row.code()));
    }
    return table;
  }

  private static void refuse(String why) {
    throw new IllegalArgumentException(why);
  }

  /** What one feed says of a code goes before what all say. */
  @Override
  public Optional<Meaning> find(ForeignCode code) {
    var own = meanings.get(Key.of(code.source(), code.system(), code.code()));
    return Optional.ofNullable(
        own != null ? own : meanings.get(Key.of(null, code.system(), code.code())));
  }

  @Override
  public Optional<String> unit(String word) {
    return Optional.ofNullable(units.get(word));
  }

  @Override
  public Optional<String> answer(String system, String code, String finding) {
    return Optional.ofNullable(answers.get(new Answer(Systems.inFhir(system), code, finding)));
  }

  @Override
  public boolean isPanel(String system, String code) {
    return panels.contains(new PanelRow(Systems.inFhir(system), code));
  }
}
