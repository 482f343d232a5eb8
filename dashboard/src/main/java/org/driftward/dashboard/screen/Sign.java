package org.driftward.dashboard.screen;

import org.driftward.ingest.contract.Level;

/**
 * How a priority is shown: colour, shape, word and digit, each enough by itself. The colours are
 * those of IEC 60601-1-8; shapes and digits are ours, 1 the most urgent.
 *
 * @param css name of the style
 * @param digit 1 to 3
 * @param word for people
 */
public record Sign(String css, int digit, String word) {

  public static Sign of(Level level) {
    return switch (level) {
      case HIGH -> new Sign("high", 1, "High");
      case MEDIUM -> new Sign("medium", 2, "Medium");
      case LOW -> new Sign("low", 3, "Low");
    };
  }
}
