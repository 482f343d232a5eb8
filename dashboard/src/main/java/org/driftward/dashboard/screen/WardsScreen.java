package org.driftward.dashboard.screen;

import java.util.List;
import org.driftward.dashboard.core.WardReader.WardLine;

/** The wards that a person sees. */
public record WardsScreen(List<Ward> wards) {

  /**
   * @param path of its board
   * @param unanswered in words, or empty where every concern is answered
   */
  public record Ward(String path, String name, String patients, String unanswered) {}

  public static WardsScreen of(List<WardLine> lines) {
    return new WardsScreen(lines.stream().map(WardsScreen::ward).toList());
  }

  private static Ward ward(WardLine line) {
    return new Ward(
        StartPage.board(line.ward()),
        line.ward(),
        Wording.count(line.patients(), "patient", "patients"),
        line.unanswered() == 0
            ? ""
            : Wording.count(line.unanswered(), "concern", "concerns") + " unanswered");
  }
}
