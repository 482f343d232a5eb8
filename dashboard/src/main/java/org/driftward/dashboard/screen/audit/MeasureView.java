package org.driftward.dashboard.screen.audit;

import java.util.List;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.jspecify.annotations.Nullable;

/**
 * One measure as it stands on the page.
 *
 * @param label its number in the list of measures, or empty
 * @param lacking which data it would take, or null
 */
public record MeasureView(
    String id,
    String label,
    String title,
    String how,
    String source,
    @Nullable String lacking,
    List<FigureView> figures) {

  static MeasureView of(Measure measure) {
    return new MeasureView(
        measure.id(),
        measure.id().startsWith("M") ? measure.id() : "",
        measure.title(),
        measure.how(),
        measure.source(),
        measure.lacking(),
        measure.figures().stream().map(FigureView::of).toList());
  }
}
