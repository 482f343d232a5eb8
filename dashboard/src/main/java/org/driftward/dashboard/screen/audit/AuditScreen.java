package org.driftward.dashboard.screen.audit;

import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.AuditReport;
import org.jspecify.annotations.Nullable;

/**
 * The measures of one ward, or of all, in one month.
 *
 * @param ward or null for all
 * @param wards to choose from
 * @param month such as {@code 2026-01}
 * @param query of a page about the same ward and month
 * @param callQuery of a call about the same ward and month
 * @param months the month and those before it, oldest first
 * @param perWard the same month on every ward; empty where one ward was asked for
 */
public record AuditScreen(
    @Nullable String ward,
    List<String> wards,
    String month,
    String policy,
    String query,
    String callQuery,
    List<MonthRow> months,
    List<MonthRow> perWard,
    List<MeasureView> measures) {

  public static AuditScreen of(
      @Nullable String ward,
      List<String> wards,
      YearMonth month,
      String query,
      String callQuery,
      Map<YearMonth, AuditReport> months,
      Map<String, AuditReport> perWard) {
    AuditReport report = months.get(month);
    if (report == null) {
      throw new IllegalArgumentException("no report of " + month);
    }
    return new AuditScreen(
        ward,
        wards,
        month.toString(),
        report.policy(),
        query,
        callQuery,
        months.entrySet().stream().map(e -> MonthRow.of(e.getKey(), e.getValue())).toList(),
        perWard.entrySet().stream().map(e -> MonthRow.of(e.getKey(), e.getValue())).toList(),
        report.measures().stream().map(MeasureView::of).toList());
  }

  /** Those that could be counted. */
  public List<MeasureView> known() {
    return measures.stream().filter(measure -> measure.lacking() == null).toList();
  }

  /** Those for which the house has no data. */
  public List<MeasureView> lacking() {
    return measures.stream().filter(measure -> measure.lacking() != null).toList();
  }

  /** Such as {@code January 2026}. */
  public String monthName() {
    return MonthRow.fullName(YearMonth.parse(month));
  }

  public List<String> heads() {
    return MonthRow.HEADS;
  }
}
