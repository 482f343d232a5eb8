package org.driftward.dashboard.web.page;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.IntakeScreen;
import org.driftward.dashboard.screen.RefusalScreen;
import org.driftward.dashboard.screen.codes.CodeScreen;
import org.driftward.dashboard.screen.codes.CodesScreen;

/** The templates of intake. */
@CheckedTemplate(basePath = "")
final class IntakePages {

  private IntakePages() {}

  static native TemplateInstance intake(Frame frame, IntakeScreen intake, CodesScreen codes);

  /** The part that is sent again as the feeds go on. */
  static native TemplateInstance intakeFeeds(Frame frame, IntakeScreen intake);

  /** The part that is sent again as files are read. */
  static native TemplateInstance intakeFiles(Frame frame, IntakeScreen intake);

  static native TemplateInstance refusal(Frame frame, RefusalScreen refusal);

  static native TemplateInstance code(Frame frame, CodeScreen code);
}
