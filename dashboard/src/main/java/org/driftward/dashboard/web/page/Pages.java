package org.driftward.dashboard.web.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import java.time.Instant;
import java.util.List;
import org.driftward.dashboard.screen.BoardScreen;
import org.driftward.dashboard.screen.CallScreen;
import org.driftward.dashboard.screen.DowntimeScreen;
import org.driftward.dashboard.screen.EpisodeScreen;
import org.driftward.dashboard.screen.EventsScreen;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.HandoverScreen;
import org.driftward.dashboard.screen.HistoryTable;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.screen.PatientScreen;
import org.driftward.dashboard.screen.QueueScreen;
import org.driftward.dashboard.screen.SheetScreen;
import org.driftward.dashboard.screen.StaffScreen;
import org.driftward.dashboard.screen.Telling;
import org.driftward.dashboard.screen.WardsScreen;
import org.driftward.dashboard.screen.Warning;
import org.driftward.dashboard.screen.audit.AuditScreen;
import org.driftward.dashboard.screen.audit.MeasureScreen;
import org.driftward.dashboard.screen.audit.TrialScreen;
import org.driftward.dashboard.screen.entry.EntryScreen;
import org.driftward.dashboard.screen.entry.PreviewScreen;
import org.jspecify.annotations.Nullable;

/** The templates, checked against the screens when the application is built. */
@CheckedTemplate(basePath = "")
final class Pages {

  private Pages() {}

  static native TemplateInstance board(Frame frame, BoardScreen board, Telling telling);

  /** The part of the board that is sent again when the ward changes. */
  static native TemplateInstance boardBody(Frame frame, BoardScreen board);

  static native TemplateInstance queue(Frame frame, QueueScreen queue, Telling telling);

  /** What the page sounds; sent again when it changes. */
  static native TemplateInstance tones(Telling telling);

  /** Why the page's quiet must not be trusted; sent again when it changes. */
  static native TemplateInstance warnings(List<Warning> warnings);

  static native TemplateInstance queueBody(Frame frame, QueueScreen queue);

  static native TemplateInstance wards(Frame frame, WardsScreen wards);

  /**
   * @param hours how far back the course and the record go
   * @param outcome of an action just done, or null
   */
  static native TemplateInstance patient(
      Frame frame,
      PatientScreen patient,
      List<Warning> warnings,
      HistoryTable history,
      Integer hours,
      @Nullable Outcome outcome);

  static native TemplateInstance patientBody(Frame frame, PatientScreen patient);

  static native TemplateInstance assess(Frame frame, EntryScreen entry);

  /** What would be said of a draft. */
  static native TemplateInstance preview(Instant now, PreviewScreen preview);

  static native TemplateInstance audit(Frame frame, AuditScreen audit);

  static native TemplateInstance measure(Frame frame, MeasureScreen measure);

  static native TemplateInstance trial(Frame frame, TrialScreen trial);

  static native TemplateInstance signIn(Frame frame, Boolean refused);

  static native TemplateInstance outcome(Outcome outcome);

  static native TemplateInstance staff(Frame frame, StaffScreen staff);

  static native TemplateInstance call(Frame frame, CallScreen call);

  static native TemplateInstance episode(Frame frame, EpisodeScreen episode);

  static native TemplateInstance events(Frame frame, EventsScreen events);

  static native TemplateInstance handover(Frame frame, HandoverScreen handover);

  static native TemplateInstance sheet(Frame frame, SheetScreen sheet);

  static native TemplateInstance downtime(Frame frame, DowntimeScreen paper);

  /** A page that only says why there is nothing else on it. */
  static native TemplateInstance nothing(Frame frame, String title, String words);
}
