package org.driftward.dashboard.screen;

import java.util.List;

/**
 * The reasons of a concern where there is room for a few; all of them stand on the patient's page.
 */
final class Reasons {

  /** As many as a person takes in at a hand-over. Engineering choice, no source. */
  private static final int SAID = 3;

  private Reasons() {}

  /** The gravest first, without their calculation, and how many more there are. */
  static String brief(List<String> reasons) {
    var said = String.join("; ", reasons.stream().limit(SAID).map(Headline::of).toList());
    return reasons.size() > SAID ? said + "; and " + (reasons.size() - SAID) + " more" : said;
  }
}
