package org.driftward.dashboard.web.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import org.driftward.alerts.contract.EpisodeView;
import org.driftward.dashboard.core.PatientView;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Patient;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * {@code GET /api/encounters/{id}}. What is absent is null, never left out.
 *
 * @param carePlan the newest; compare its {@code from} and {@code until} with {@code asOf}
 */
@JsonInclude(JsonInclude.Include.ALWAYS)
record PatientJson(
    String encounter,
    Patient patient,
    String ward,
    @Nullable String bed,
    Instant admitted,
    @Nullable Instant discharged,
    Instant asOf,
    @Nullable CarePlan carePlan,
    @Nullable SnapshotJson snapshot,
    @Nullable EpisodeView episode) {

  private static final JsonFormat<PatientJson> FORMAT = JsonFormat.of(PatientJson.class);

  /** A snapshot, and whether the next set is overdue now. */
  record SnapshotJson(@JsonUnwrapped Snapshot snapshot, boolean overdue) {}

  static byte[] write(PatientView view, Instant asOf) {
    var encounter = view.encounter();
    var snapshot = view.snapshot();
    return FORMAT.write(
        new PatientJson(
            encounter.id(),
            encounter.patient(),
            encounter.ward(),
            encounter.bed(),
            encounter.admitted(),
            encounter.discharged(),
            asOf,
            view.carePlan(),
            snapshot == null ? null : new SnapshotJson(snapshot, view.card().overdue()),
            view.episode() == null ? null : EpisodeView.of(view.episode(), view.card().present())));
  }
}
