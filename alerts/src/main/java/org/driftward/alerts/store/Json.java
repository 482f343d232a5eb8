package org.driftward.alerts.store;

import java.nio.charset.StandardCharsets;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.Handover;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.WardHandover;
import org.driftward.alerts.core.episode.Course;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.scoring.contract.CarePlan;

/** Records as the text of JSON columns. */
record Json<T>(JsonFormat<T> format) {

  static final Json<Course> COURSE = new Json<>(JsonFormat.of(Course.class));
  static final Json<Episode> EPISODE = new Json<>(JsonFormat.of(Episode.class));
  static final Json<CarePlan> CARE_PLAN = new Json<>(JsonFormat.of(CarePlan.class));
  static final Json<EpisodeChange> CHANGE = new Json<>(JsonFormat.of(EpisodeChange.class));
  static final Json<ChangeBody> CHANGE_BODY = new Json<>(JsonFormat.of(ChangeBody.class));
  static final Json<Shift> SHIFT = new Json<>(JsonFormat.of(Shift.class));
  static final Json<Call> CALL = new Json<>(JsonFormat.of(Call.class));
  static final Json<ClinicalEvent> EVENT = new Json<>(JsonFormat.of(ClinicalEvent.class));
  static final Json<Handover> HANDOVER = new Json<>(JsonFormat.of(Handover.class));
  static final Json<WardHandover> WARD_HANDOVER = new Json<>(JsonFormat.of(WardHandover.class));

  String text(T value) {
    return new String(format.write(value), StandardCharsets.UTF_8);
  }

  T read(String text) {
    return format.read(text.getBytes(StandardCharsets.UTF_8));
  }
}
