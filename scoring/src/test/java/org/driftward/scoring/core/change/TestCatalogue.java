package org.driftward.scoring.core.change;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.CatalogueEntry.Kind;
import org.driftward.ingest.contract.CatalogueEntry.Range;
import org.driftward.ingest.contract.CatalogueEntry.Worse;
import org.jspecify.annotations.Nullable;

/** The shipped catalogue with entries of a head-to-toe examination added, for tests. */
final class TestCatalogue implements Catalogue {

  private final List<CatalogueEntry> entries = new ArrayList<>();

  static TestCatalogue shippedAnd(CatalogueEntry... more) {
    var catalogue = new TestCatalogue();
    catalogue.entries.addAll(Catalogue.shipped().entries());
    catalogue.entries.addAll(List.of(more));
    return catalogue;
  }

  static CatalogueEntry quantity(
      String code, String unit, Worse worse, @Nullable String change, @Nullable String noise) {
    return entry(code, Kind.QUANTITY, unit, true, null, List.of(), List.of(), worse, change, noise);
  }

  /** A quantity with an expected range and a noise, and no change that counts by itself. */
  static CatalogueEntry expected(
      String code, String unit, String low, String high, Worse worse, String noise) {
    var range = new Range(new BigDecimal(low), new BigDecimal(high));
    return entry(code, Kind.QUANTITY, unit, false, range, List.of(), List.of(), worse, null, noise);
  }

  static CatalogueEntry grade(String code, int low, int high, Worse worse) {
    var range = new Range(BigDecimal.valueOf(low), BigDecimal.valueOf(high));
    return entry(code, Kind.GRADE, null, true, range, List.of(), List.of(), worse, "1", null);
  }

  static CatalogueEntry coded(String code, Worse worse, List<String> normal, String... options) {
    return entry(code, Kind.CODED, null, true, null, List.of(options), normal, worse, "1", null);
  }

  private static CatalogueEntry entry(
      String code,
      Kind kind,
      @Nullable String unit,
      boolean sided,
      @Nullable Range range,
      List<String> options,
      List<String> normal,
      Worse worse,
      @Nullable String change,
      @Nullable String noise) {
    return new CatalogueEntry(
        code,
        code.replace('-', ' '),
        "test",
        kind,
        unit,
        List.of(),
        sided,
        null,
        range,
        range,
        options,
        normal,
        worse,
        change == null ? null : new BigDecimal(change),
        noise == null ? null : new BigDecimal(noise),
        Group.CIRCULATION,
        "common practice, no source");
  }

  @Override
  public List<CatalogueEntry> entries() {
    return List.copyOf(entries);
  }

  @Override
  public Optional<CatalogueEntry> find(String code) {
    return entries.stream().filter(entry -> entry.code().equals(code)).findFirst();
  }
}
