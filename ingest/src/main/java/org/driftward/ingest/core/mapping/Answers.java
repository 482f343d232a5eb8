package org.driftward.ingest.core.mapping;

import java.util.Locale;

/** How answers are compared: without regard to case and surrounding blanks. */
final class Answers {

  private Answers() {}

  static String key(String answer) {
    return answer.strip().toLowerCase(Locale.ROOT);
  }
}
