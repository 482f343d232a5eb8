package org.driftward.dashboard.screen;

/** What a glance has time for: a reason up to where it begins to explain itself. */
final class Headline {

  private Headline() {}

  /** The words before the first colon or semicolon that ends a thought; a time of day has none. */
  static String of(String words) {
    int colon = words.indexOf(": ");
    int semicolon = words.indexOf("; ");
    int end = colon < 0 ? semicolon : semicolon < 0 ? colon : Math.min(colon, semicolon);
    return end < 0 ? words : words.substring(0, end);
  }
}
