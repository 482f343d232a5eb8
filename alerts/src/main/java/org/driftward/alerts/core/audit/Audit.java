package org.driftward.alerts.core.audit;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.AuditReport;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.alerts.core.policy.EscalationPolicy;

/** Every measure, from the evidence. Immutable, thread-safe. */
public final class Audit {

  private final EscalationPolicy policy;
  private final ZoneId zone;

  /**
   * @param zone of the hospital, for hours and weekdays
   */
  public Audit(EscalationPolicy policy, ZoneId zone) {
    this.policy = policy;
    this.zone = zone;
  }

  public AuditReport report(Evidence evidence, AuditQuestion question, Instant now) {
    var view = new View(evidence, question, zone, policy);
    var measures = new ArrayList<Measure>();
    measures.addAll(AnswerMeasures.of(view));
    measures.addAll(ObservationMeasures.of(view));
    measures.addAll(BurdenMeasures.of(view));
    measures.addAll(PlanMeasures.of(view));
    measures.addAll(CallMeasures.of(view));
    measures.addAll(EventMeasures.of(view));
    measures.sort(Comparator.comparingInt(Audit::place));
    return new AuditReport(question, now, policy.version(), List.copyOf(measures));
  }

  /** Days that beds on the wards of a question were occupied, until {@code until} at the latest. */
  public static double bedDays(
      AuditQuestion question, ZoneId zone, List<Stay> stays, Instant until) {
    return new Window(question, zone).bedDays(stays, until);
  }

  /** Those without a published number first, as they are made; then M1 to M20. */
  private static int place(Measure measure) {
    return measure.id().matches("M\\d+") ? Integer.parseInt(measure.id().substring(1)) : 0;
  }
}
