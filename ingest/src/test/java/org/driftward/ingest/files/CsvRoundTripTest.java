package org.driftward.ingest.files;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CatalogueEntry;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.AssessmentReader.Defaults;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.files.Column;
import org.driftward.ingest.core.files.FileMapping;
import org.driftward.ingest.core.files.RecordCutter;
import org.driftward.ingest.unit.UcumConversion;
import org.junit.jupiter.api.Test;

/** What a CSV library writes under our header, we read as the same assessments. */
class CsvRoundTripTest {

  private static final Catalogue CATALOGUE = Catalogue.shipped();
  private static final Instant TAKEN = Instant.parse("2026-01-05T03:10:00Z");

  @Test
  void shouldReadBackEveryFindingOfTheCatalogueAtEverySiteAndSide() throws Exception {
    var header = Column.header(CATALOGUE);
    var written =
        List.of(assessment("A-1", 0), assessment("A-2", 1), assessment("quoted \"A,3\"", 2));

    var read = read(file(header, written));

    assertThat(read).isEqualTo(written);
    assertThat(read.get(0).findings()).hasSize(header.size() - Column.FIELDS.size());
  }

  private static byte[] file(List<String> header, List<Assessment> assessments) throws IOException {
    var out = new StringBuilder();
    try (var printer = new CSVPrinter(out, CSVFormat.RFC4180)) {
      printer.printRecord(header);
      for (var each : assessments) {
        printer.printRecord(row(header, each));
      }
    }
    return out.toString().getBytes(UTF_8);
  }

  private static List<String> row(List<String> header, Assessment assessment) {
    var values =
        assessment.findings().stream()
            .collect(Collectors.toMap(CsvRoundTripTest::column, each -> each.value().plain()));
    values.put("id", assessment.id());
    values.put("revision", String.valueOf(assessment.revision()));
    values.put("status", assessment.status().word());
    values.put("encounter", assessment.encounter());
    values.put("patient", assessment.patient());
    values.put("takenAt", assessment.takenAt().toString());
    values.put("recordedAt", assessment.recordedAt().toString());
    values.put("source", assessment.source().word());
    values.put("by", assessment.by());
    values.put("reason", String.valueOf(assessment.reason()));
    return header.stream().map(name -> values.getOrDefault(name, "")).toList();
  }

  /** As docs/interfaces.md describes it. */
  private static String column(Finding finding) {
    var key = finding.key();
    return key.code()
        + (key.site() == null ? "" : "@" + key.site())
        + (key.side() == null ? "" : "/" + key.side().word())
        + (finding.value() instanceof FindingValue.Quantity quantity
            ? " [" + quantity.unit() + "]"
            : "");
  }

  private static List<Assessment> read(byte[] file) throws Exception {
    var limits = new IntakeLimits(Duration.ofMinutes(5), Duration.ofHours(24), 1000);
    var slices = new RecordCutter(',').cut(file, true, 100);
    var rows = new ArrayList<byte[]>();
    slices.forEach(slice -> rows.add(Arrays.copyOfRange(file, slice.from(), slice.to())));
    var reader =
        RowReader.csv(
            rows.remove(0),
            UTF_8,
            FileMapping.OWN,
            CATALOGUE,
            new UcumConversion()::convert,
            new AssessmentReader(limits));
    var read = new ArrayList<Assessment>();
    for (var row : rows) {
      read.addAll(reader.read(row, new Defaults(TAKEN, "nobody")).reading().assessments());
    }
    return read;
  }

  private static Assessment assessment(String id, int variant) {
    var findings = new ArrayList<Finding>();
    for (var entry : CATALOGUE.entries()) {
      for (var key : keys(entry)) {
        findings.add(new Finding(key, value(entry, variant)));
      }
    }
    return new Assessment(
        id,
        2,
        Assessment.Status.AMENDED,
        "V-1",
        "P-1",
        TAKEN,
        TAKEN.plusSeconds(60),
        Assessment.Source.MONITOR,
        "device \"7\", ward heron",
        "first line\nsecond, \"line\"",
        findings);
  }

  private static List<FindingKey> keys(CatalogueEntry entry) {
    var keys = new ArrayList<FindingKey>();
    var sites =
        entry.sites().isEmpty() ? new String[] {null} : entry.sites().toArray(String[]::new);
    var sides = entry.sided() ? Side.values() : new Side[] {null};
    for (var site : sites) {
      for (var side : sides) {
        keys.add(new FindingKey(entry.code(), site, side));
      }
    }
    return keys;
  }

  private static FindingValue value(CatalogueEntry entry, int variant) {
    return switch (entry.kind()) {
      case QUANTITY ->
          new FindingValue.Quantity(
              new BigDecimal("36.85").add(BigDecimal.valueOf(variant)), entry.unit());
      case GRADE -> new FindingValue.Grade(entry.accepted().low().intValueExact() + variant % 2);
      case CODED -> new FindingValue.Coded(entry.options().get(variant % entry.options().size()));
      case TEXT -> new FindingValue.Text("words, \"more\" words\r\nand é " + variant);
    };
  }
}
