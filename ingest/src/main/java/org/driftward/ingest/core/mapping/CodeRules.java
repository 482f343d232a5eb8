package org.driftward.ingest.core.mapping;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.core.UnitConversion;
import org.driftward.ingest.core.mapping.CodeRows.AnswerRow;

/** What a row of a mapping may say, whoever writes it and wherever it stands. Immutable. */
public final class CodeRules {

  private final Catalogue catalogue;
  private final UnitConversion units;

  public CodeRules(Catalogue catalogue, UnitConversion units) {
    this.catalogue = catalogue;
    this.units = units;
  }

  public Catalogue catalogue() {
    return catalogue;
  }

  /** Why the row must not hold, in words, beginning with its code; empty if it may. */
  public Optional<String> fault(CodeRow row) {
    return catalogue
        .find(row.finding())
        .map(entry -> contradiction(row, entry))
        .orElseGet(() -> Optional.of("means " + row.finding() + ", which nobody knows"))
        .map(why -> "code " + row.code() + " " + why);
  }

  private Optional<String> contradiction(CodeRow row, CatalogueEntry entry) {
    if (row.site() != null && !entry.sites().contains(row.site())) {
      return Optional.of("has site " + row.site() + ", none of " + entry.sites());
    }
    if (row.side() != null && !entry.sided()) {
      return Optional.of("has a side, and " + entry.code() + " has none");
    }
    return unit(row, entry).or(() -> answer(row, entry));
  }

  private Optional<String> unit(CodeRow row, CatalogueEntry entry) {
    var named = new ArrayList<String>();
    if (row.unit() != null) {
      named.add(row.unit());
    }
    if (row.units() != null) {
      named.addAll(row.units().values());
    }
    if (named.isEmpty()) {
      return Optional.empty();
    }
    var ours = entry.unit();
    if (entry.kind() != Kind.QUANTITY || ours == null) {
      return Optional.of("has a unit, and " + entry.code() + " has none");
    }
    return named.stream()
        .filter(unit -> units.convert(BigDecimal.ONE, unit, ours).isEmpty())
        .findFirst()
        .map(unit -> "has the unit " + unit + ", which does not convert to the UCUM unit " + ours);
  }

  private static Optional<String> answer(CodeRow row, CatalogueEntry entry) {
    return Meaning.of(row).values().values().stream()
        .filter(option -> !entry.options().contains(option))
        .findFirst()
        .map(option -> "has the answer " + option + ", none of " + entry.options());
  }

  /** As {@link #fault(CodeRow)}. */
  Optional<String> fault(AnswerRow row) {
    var options = catalogue.find(row.finding()).map(CatalogueEntry::options).orElse(List.of());
    return options.contains(row.option())
        ? Optional.empty()
        : Optional.of("answer " + row.code() + " means " + row.option() + ", none of " + options);
  }
}
