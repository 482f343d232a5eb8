package org.driftward.dashboard.screen;

import java.util.regex.Pattern;

/** What a glance has time for: a reason up to where it begins to explain itself. */
final class Headline {

  /** A semicolon ends a thought; a colon only one that has said a number, not a mere label. */
  private static final Pattern THOUGHT = Pattern.compile("^([^;]*?\\d[^;]*?): |^([^;]*); ");

  private Headline() {}

  static String of(String words) {
    var thought = THOUGHT.matcher(words);
    if (!thought.find()) {
      return words;
    }
    return thought.group(1) != null ? thought.group(1) : thought.group(2);
  }
}
