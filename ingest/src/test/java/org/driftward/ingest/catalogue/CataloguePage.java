package org.driftward.ingest.catalogue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CatalogueEntry.Range;
import org.driftward.ingest.contract.CatalogueEntry.Worse;

/** The catalogue as a page for people. */
final class CataloguePage {

  private static final String HEAD =
      """
      # The catalogue of findings

      Written from `ingest/src/main/resources/catalogue/` by `CatalogueDocTest`; do not edit.
      %d findings in the order of a head-to-toe examination. It supports an examination and does not
      teach one: clinical judgement and local policy come first.

      LOINC codes are given only where they were verified. This material contains content from LOINC
      (http://loinc.org). LOINC is copyright Regenstrief Institute, Inc. and the Logical Observation
      Identifiers Names and Codes (LOINC) Committee and is available at no cost under the license at
      http://loinc.org/license. Ranges of NEWS2: Royal College of Physicians, National Early Warning
      Score (NEWS) 2, 2017.
      """;

  private final StringBuilder page = new StringBuilder();

  private CataloguePage() {}

  static String of(Catalogue catalogue) {
    var writer = new CataloguePage();
    var entries = catalogue.entries();
    writer.page.append(HEAD.formatted(entries.size()));
    entries.stream()
        .map(CatalogueEntry::region)
        .distinct()
        .forEach(
            region ->
                writer.region(
                    region,
                    entries.stream().filter(entry -> entry.region().equals(region)).toList()));
    return writer.page.toString();
  }

  private void region(String region, List<CatalogueEntry> entries) {
    page.append("\n## ").append(title(region)).append("\n\n");
    page.append("| finding | code | value | where | expected | worse | source |\n");
    page.append("| --- | --- | --- | --- | --- | --- | --- |\n");
    entries.forEach(this::row);
  }

  private void row(CatalogueEntry entry) {
    page.append(
        "| %s | `%s`%s | %s | %s | %s | %s | %s |\n"
            .formatted(
                entry.name() + (entry.hint() == null ? "" : ". *" + entry.hint() + "*"),
                entry.code(),
                entry.loinc() == null ? "" : "<br>LOINC " + entry.loinc(),
                value(entry),
                where(entry),
                expected(entry),
                worse(entry),
                entry.source()));
  }

  private static String value(CatalogueEntry entry) {
    var accepted = entry.accepted();
    var computed = entry.formula() == null ? "" : "; computed as " + entry.formula();
    if (entry.kind() == Kind.CODED) {
      return String.join(", ", entry.options());
    }
    if (entry.kind() == Kind.TEXT || accepted == null) {
      return "words";
    }
    var steps =
        entry.scale().entrySet().stream()
            .map(step -> step.getKey() + " " + step.getValue())
            .collect(Collectors.joining(", "));
    var unit = entry.unit() == null ? "" : " " + entry.unit();
    return range(accepted) + unit + (steps.isEmpty() ? "" : ": " + steps) + computed;
  }

  private static String where(CatalogueEntry entry) {
    var places = new ArrayList<>(entry.sites());
    var text = String.join(", ", places);
    return entry.sided() ? (text.isEmpty() ? "" : text + "; ") + "left, right" : text;
  }

  private static String expected(CatalogueEntry entry) {
    return entry.expected() == null ? String.join(", ", entry.normal()) : range(entry.expected());
  }

  private static String worse(CatalogueEntry entry) {
    if (entry.worse() == Worse.NONE) {
      return "";
    }
    var way =
        entry.kind() == Kind.CODED && entry.worse() == Worse.HIGHER
            ? "to the right"
            : entry.worse().word();
    return entry.change() == null ? way : way + ", by " + plain(entry.change());
  }

  private static String range(Range range) {
    return range.low().compareTo(range.high()) == 0
        ? plain(range.low())
        : plain(range.low()) + " to " + plain(range.high());
  }

  private static String plain(BigDecimal number) {
    return number.toPlainString();
  }

  private static String title(String region) {
    return Character.toUpperCase(region.charAt(0)) + region.substring(1).replace('-', ' ');
  }
}
