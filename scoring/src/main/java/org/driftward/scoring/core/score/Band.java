package org.driftward.scoring.core.score;

import java.util.List;
import java.util.Objects;

/**
 * One cell of a published table.
 *
 * @param from first step of the input's resolution that belongs; {@link Long#MIN_VALUE} if open
 * @param upto last step that belongs; {@link Long#MAX_VALUE} if open
 * @param words the words that belong, as bits, if the input is coded; else 0
 * @param given what else must hold
 * @param text the cell in words, for example {@code 21 to 24}
 */
public record Band(long from, long upto, long words, List<Given> given, int points, String text) {

  /** Another input of the score must be one of some words. */
  public record Given(Input input, long words) {
    boolean holds(long[] steps) {
      return (words >>> steps[input.place()] & 1) == 1;
    }

    boolean excludes(Given other) {
      return input.place() == other.input.place() && (words & other.words) == 0;
    }
  }

  public Band {
    given = List.copyOf(given);
    Objects.requireNonNull(text, "text");
    if (points < 0) {
      throw new IllegalArgumentException("band " + text + " earns " + points + " points");
    }
    if (from > upto) {
      throw new IllegalArgumentException("band " + text + " holds nothing");
    }
  }

  public static Band number(long from, long upto, List<Given> given, int points, String text) {
    return new Band(from, upto, 0, given, points, text);
  }

  public static Band words(long words, List<Given> given, int points, String text) {
    return new Band(Long.MIN_VALUE, Long.MAX_VALUE, words, given, points, text);
  }

  boolean holds(long value) {
    return words == 0 ? from <= value && value <= upto : (words >>> value & 1) == 1;
  }

  boolean given(long[] steps) {
    for (int i = 0; i < given.size(); i++) {
      if (!given.get(i).holds(steps)) {
        return false;
      }
    }
    return true;
  }

  /** Whether what else must hold for either can hold together. */
  boolean agrees(Band other) {
    for (int i = 0; i < given.size(); i++) {
      for (int j = 0; j < other.given.size(); j++) {
        if (given.get(i).excludes(other.given.get(j))) {
          return false;
        }
      }
    }
    return true;
  }

  /** Whether what else must hold does, as far as the inputs in {@code known} say. */
  boolean possible(long[] steps, long known) {
    return given.stream()
        .allMatch(other -> (known & other.input().bit()) == 0 || other.holds(steps));
  }
}
