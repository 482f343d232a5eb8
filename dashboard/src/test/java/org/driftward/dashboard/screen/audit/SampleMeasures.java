package org.driftward.dashboard.screen.audit;

import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.AuditReport;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.contract.PolicyTrial;
import org.driftward.alerts.contract.PolicyTrial.Outcome;
import org.driftward.alerts.contract.PolicyTrial.Raised;
import org.driftward.dashboard.screen.audit.MeasureScreen.Known;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/** Invented measures of an invented month. */
public final class SampleMeasures {

  private static final Instant FROM = Instant.parse("2026-01-01T00:00:00Z");
  private static final Instant TO = Instant.parse("2026-02-01T00:00:00Z");

  private SampleMeasures() {}

  public static AuditScreen screen() {
    var report =
        new AuditReport(
            AuditQuestion.of(null, FROM, TO),
            TO,
            "shipped-1",
            List.of(
                measure("time-to-acknowledge", null, share("Within policy")),
                measure("time-to-attend", null, share("Within policy")),
                measure("M14", null, share("Overdue by 33 % of the interval or more")),
                measure("M15", null, share("All core observations")),
                measure("M20", null, share("Alarms per 100 occupied bed-days")),
                measure("M1", "events of the kind arrest")));
    var month = YearMonth.of(2026, 1);
    return AuditScreen.of(
        null,
        List.of("alder", "birch"),
        month,
        "?month=2026-01",
        "?from=2026-01-01T00:00:00Z&to=2026-02-01T00:00:00Z",
        Map.of(month, report),
        Map.of("alder", report));
  }

  public static MeasureScreen measure() {
    return MeasureScreen.of(
        "alder",
        "2026-01",
        "?month=2026-01&ward=alder",
        "?from=2026-01-01T00:00:00Z&to=2026-02-01T00:00:00Z&ward=alder",
        measure("M13", null, share("All")),
        trace -> new Known("alder", "4", FROM, trace.kind().name()),
        TO,
        ZoneOffset.UTC);
  }

  public static TrialScreen trial() {
    var outcome = new Outcome("shipped-1", 2, 1, 1, 0, 3, 1, 40);
    var raised = new Raised("V-104", "alder", FROM, TO, Level.HIGH, "NEWS2 7 at 03:00");
    var trial =
        new PolicyTrial(outcome, outcome, List.of(raised), List.of(raised), List.of(), 1, 1, 2);
    return TrialScreen.of(
        null, List.of("alder"), "2026-01", "escalation:", trial, TO, ZoneOffset.UTC);
  }

  private static Measure measure(String id, @Nullable String lacking, Figure... figures) {
    return new Measure(id, "Title of " + id, "How.", "Source", List.of(figures), lacking);
  }

  private static Figure share(String name) {
    return new Figure(
        name,
        "%",
        50.0,
        1.0,
        2,
        List.of("episode/E-V-104-1"),
        List.of("encounter/V-105", "encounter/V-105/event/CE-1", "audit-event/X-1"),
        true);
  }
}
