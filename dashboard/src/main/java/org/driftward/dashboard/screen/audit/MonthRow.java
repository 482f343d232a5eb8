package org.driftward.dashboard.screen.audit;

import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.driftward.alerts.contract.AuditReport;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.jspecify.annotations.Nullable;

/**
 * The key figures of one month or of one ward, for a chart and the table beside it.
 *
 * @param name of the month or the ward
 * @param values in the order of {@link #HEADS}; null where there was nothing to count
 * @param words likewise, with n/N, or a dash
 */
public record MonthRow(String name, List<@Nullable Double> values, List<String> words) {

  /** What is compared. */
  public static final List<String> HEADS =
      List.of(
          "Alarms per 100 bed-days",
          "Acknowledged within policy, %",
          "At the bedside within policy, %",
          "Sets overdue by a third or more, %",
          "Complete sets, %");

  private static final DateTimeFormatter FULL = DateTimeFormatter.ofPattern("MMMM yyyy", Locale.UK);
  private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM yyyy", Locale.UK);

  static String fullName(YearMonth month) {
    return month.format(FULL);
  }

  static MonthRow of(YearMonth month, AuditReport report) {
    return of(month.format(MONTH), report);
  }

  static MonthRow of(String name, AuditReport report) {
    var figures =
        List.of(
            find(report, "M20", "Alarms per 100 occupied bed-days"),
            find(report, "time-to-acknowledge", "Within policy"),
            find(report, "time-to-attend", "Within policy"),
            find(report, "M14", "Overdue by 33 % of the interval or more"),
            find(report, "M15", "All core observations"));
    return new MonthRow(
        name,
        figures.stream().<@Nullable Double>map(Figure::value).toList(),
        figures.stream().map(MonthRow::words).toList());
  }

  private static String words(Figure figure) {
    var view = FigureView.of(figure);
    return figure.value() == null ? "–" : view.value() + " (" + view.fraction() + ")";
  }

  private static Figure find(AuditReport report, String measure, String name) {
    return report.measures().stream()
        .filter(one -> one.id().equals(measure))
        .flatMap(one -> one.figures().stream())
        .filter(figure -> figure.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("no figure " + measure + " " + name));
  }
}
