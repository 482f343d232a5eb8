package org.driftward.alerts.web;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.jspecify.annotations.Nullable;

/** Measures as CSV (RFC 4180), one figure a line, for a spreadsheet. */
final class AuditCsv {

  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setHeader(
              "measure",
              "title",
              "figure",
              "value",
              "unit",
              "numerator",
              "denominator",
              "lacking",
              "counted",
              "others",
              "how",
              "source")
          .get();

  private AuditCsv() {}

  static String write(List<Measure> measures) {
    var text = new StringWriter();
    try (var csv = new CSVPrinter(text, FORMAT)) {
      for (var measure : measures) {
        if (measure.figures().isEmpty()) {
          line(csv, measure, null);
        }
        for (var figure : measure.figures()) {
          line(csv, measure, figure);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.toString();
  }

  private static void line(CSVPrinter csv, Measure measure, @Nullable Figure figure)
      throws IOException {
    csv.printRecord(
        measure.id(),
        measure.title(),
        figure == null ? null : figure.name(),
        figure == null ? null : figure.value(),
        figure == null ? null : figure.unit(),
        figure == null ? null : figure.numerator(),
        figure == null ? null : figure.denominator(),
        measure.lacking(),
        figure == null ? null : traces(figure.counted(), figure.complete()),
        figure == null ? null : traces(figure.others(), figure.complete()),
        measure.how(),
        measure.source());
  }

  private static String traces(List<String> traces, boolean complete) {
    return String.join(" ", traces) + (complete ? "" : " ...");
  }
}
