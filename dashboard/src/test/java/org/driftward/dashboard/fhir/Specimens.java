package org.driftward.dashboard.fhir;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;

/** One finding for every place of an entry of the catalogue. */
final class Specimens {

  static final Instant TAKEN = Instant.parse("2026-01-05T03:10:07.250Z");

  private Specimens() {}

  static Stream<CatalogueEntry> entries() {
    return Catalogue.shipped().entries().stream();
  }

  static List<Finding> findings(CatalogueEntry entry) {
    var findings = new ArrayList<Finding>();
    var sites =
        entry.sites().isEmpty() ? new String[] {null} : entry.sites().toArray(String[]::new);
    var sides = entry.sided() ? Side.values() : new Side[] {null};
    for (var site : sites) {
      for (var side : sides) {
        findings.add(new Finding(new FindingKey(entry.code(), site, side), value(entry)));
      }
    }
    return findings;
  }

  private static FindingValue value(CatalogueEntry entry) {
    return switch (entry.kind()) {
      case QUANTITY ->
          new FindingValue.Quantity(
              entry.accepted() == null ? new BigDecimal("1.5") : entry.accepted().high(),
              entry.unit());
      case GRADE -> new FindingValue.Grade(entry.accepted().high().intValueExact());
      case CODED -> new FindingValue.Coded(entry.options().get(0));
      case TEXT -> new FindingValue.Text("slept well");
    };
  }

  static Assessment assessment(Assessment.Status status, List<Finding> findings) {
    return new Assessment(
        "A-1",
        status == Assessment.Status.FINAL ? 1 : 2,
        status,
        "V-1",
        "P-1",
        TAKEN,
        TAKEN.plusSeconds(60),
        Assessment.Source.BEDSIDE,
        "n.fairweather",
        status == Assessment.Status.FINAL ? null : "typing error",
        findings);
  }
}
