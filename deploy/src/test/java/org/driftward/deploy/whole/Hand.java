package org.driftward.deploy.whole;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;

/**
 * The hand of a practised nurse at the entry page, whose time is added up by the keystroke-level
 * model (Card, Moran and Newell, Communications of the ACM 23(7), 1980, 396-410): K 0.28 s for a
 * key by an average non-secretary typist, P 1.10 s to point at a target, M 1.35 s to prepare
 * mentally. A key of the keypad is K; any other target is P and K; M stands before each number and
 * each other touch, and never within one (their rules 1 and 2). The page's answers cost nothing
 * here; the wall time of the same script is measured beside it.
 */
final class Hand {

  private static final double KEY = 0.28;
  private static final double POINT = 1.10;
  private static final double PREPARE = 1.35;

  private final Page page;
  private double seconds;
  private int touches;

  Hand(Page page) {
    this.page = page;
  }

  /** By the model. */
  double seconds() {
    return seconds;
  }

  /** How many times the finger came down. */
  int touches() {
    return touches;
  }

  void touch(Locator target) {
    touches++;
    seconds += PREPARE + POINT + KEY;
    target.tap();
  }

  /** Points at a field in order to type into it; deciding what to type comes with the number. */
  void reach(Locator field) {
    touches++;
    seconds += POINT + KEY;
    field.tap();
  }

  /** Types a number on the page's own keypad and goes on to the next. */
  void type(String number) {
    seconds += PREPARE;
    for (int i = 0; i < number.length(); i++) {
      key(number.charAt(i) == '.' ? "Point" : String.valueOf(number.charAt(i)));
    }
    key("Next number");
  }

  private void key(String label) {
    touches++;
    seconds += KEY;
    page.locator("#keypad button[aria-label='" + label + "']").tap();
  }
}
