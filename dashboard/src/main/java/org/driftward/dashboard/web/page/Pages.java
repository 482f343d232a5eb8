package org.driftward.dashboard.web.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import org.driftward.dashboard.screen.BoardScreen;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.HistoryTable;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.screen.PatientScreen;
import org.driftward.dashboard.screen.QueueScreen;
import org.driftward.dashboard.screen.WardsScreen;
import org.driftward.dashboard.screen.entry.EntryScreen;
import org.driftward.dashboard.screen.entry.PreviewScreen;
import org.jspecify.annotations.Nullable;

/** The templates, checked against the screens when the application is built. */
@CheckedTemplate(basePath = "")
final class Pages {

  private Pages() {}

  static native TemplateInstance board(Frame frame, BoardScreen board);

  /** The part of the board that is sent again when the ward changes. */
  static native TemplateInstance boardBody(Frame frame, BoardScreen board);

  static native TemplateInstance queue(Frame frame, QueueScreen queue);

  static native TemplateInstance queueBody(Frame frame, QueueScreen queue);

  static native TemplateInstance wards(Frame frame, WardsScreen wards);

  /**
   * @param hours how far back the course and the record go
   * @param outcome of an action just done, or null
   */
  static native TemplateInstance patient(
      Frame frame,
      PatientScreen patient,
      HistoryTable history,
      Integer hours,
      @Nullable Outcome outcome);

  static native TemplateInstance patientBody(Frame frame, PatientScreen patient);

  static native TemplateInstance assess(Frame frame, EntryScreen entry);

  /** What would be said of a draft. */
  static native TemplateInstance preview(Frame frame, PreviewScreen preview);

  static native TemplateInstance signIn(Frame frame, Boolean refused);

  static native TemplateInstance outcome(Outcome outcome);

  /** A page that only says why there is nothing else on it. */
  static native TemplateInstance nothing(Frame frame, String title, String words);
}
