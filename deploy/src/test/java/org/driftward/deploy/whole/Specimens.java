package org.driftward.deploy.whole;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.CatalogueEntry.Range;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;

/** A random value for every finding of the catalogue at every site and side. */
final class Specimens {

  private Specimens() {}

  /** A finding of one time. */
  record Taken(Instant at, Finding finding) {
    Fact fact() {
      return Fact.of(finding, at.toString());
    }
  }

  /**
   * Each at a time of its own.
   *
   * @param finest how finely the times are told; the database keeps microseconds
   */
  static List<Taken> of(Random random, Instant from, Duration finest) {
    var begin = from.truncatedTo(ChronoUnit.MILLIS);
    var all = new ArrayList<Taken>();
    for (var entry : Catalogue.shipped().entries()) {
      for (var key : keys(entry)) {
        var at = begin.plus(finest.multipliedBy(all.size() * 7_001L));
        all.add(new Taken(at, new Finding(key, value(entry, random))));
      }
    }
    return all;
  }

  private static List<FindingKey> keys(CatalogueEntry entry) {
    var sites =
        entry.sites().isEmpty() ? new String[] {null} : entry.sites().toArray(String[]::new);
    var sides = entry.sided() ? Side.values() : new Side[] {null};
    var keys = new ArrayList<FindingKey>();
    for (var site : sites) {
      for (var side : sides) {
        keys.add(new FindingKey(entry.code(), site, side));
      }
    }
    return keys;
  }

  private static FindingValue value(CatalogueEntry entry, Random random) {
    return switch (entry.kind()) {
      case QUANTITY -> new FindingValue.Quantity(number(entry.accepted(), random, 1), entry.unit());
      case GRADE -> new FindingValue.Grade(number(entry.accepted(), random, 0).intValueExact());
      case CODED ->
          new FindingValue.Coded(entry.options().get(random.nextInt(entry.options().size())));
      case TEXT -> new FindingValue.Text("slept well, " + random.nextInt(9) + " h \u2192 \u00e9");
    };
  }

  private static BigDecimal number(Range range, Random random, int decimals) {
    var width = range.high().subtract(range.low());
    return range
        .low()
        .add(width.multiply(BigDecimal.valueOf(random.nextDouble())))
        .setScale(decimals, RoundingMode.DOWN);
  }
}
