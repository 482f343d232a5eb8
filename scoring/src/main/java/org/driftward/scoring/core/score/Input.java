package org.driftward.scoring.core.score;

import java.util.List;
import java.util.Objects;
import org.driftward.scoring.contract.Scalar;
import org.jspecify.annotations.Nullable;

/**
 * One thing a score has to know.
 *
 * @param place in the list of inputs of its score, from 0
 * @param code the code that snapshots name it by: the finding's, where it is one
 * @param unit UCUM code of the value, or null for grades and words
 * @param resolution how finely the published table reads it; without meaning for words
 * @param words the codes it may take; empty for a number
 */
public record Input(
    int place,
    String code,
    @Nullable String unit,
    Resolution resolution,
    List<String> words,
    Measure measure,
    List<Scalar> shownWords) {

  public Input(
      int place,
      String code,
      @Nullable String unit,
      Resolution resolution,
      List<String> words,
      Measure measure) {
    this(place, code, unit, resolution, words, measure, words.stream().map(Scalar::of).toList());
  }

  public Input {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(resolution, "resolution");
    Objects.requireNonNull(measure, "measure");
    words = List.copyOf(words);
    shownWords = List.copyOf(shownWords);
    if (place < 0 || place >= Long.SIZE) {
      throw new IllegalArgumentException(code + " is input number " + place + " of at most 64");
    }
    if (words.size() > Long.SIZE) {
      throw new IllegalArgumentException(code + " has " + words.size() + " words");
    }
  }

  boolean coded() {
    return !words.isEmpty();
  }

  Scalar shown(int word) {
    return shownWords.get(word);
  }

  long bit() {
    return 1L << place;
  }

  /**
   * A set of words as bits, by their places.
   *
   * @throws IllegalArgumentException naming the first that the input cannot take
   */
  public long bits(Iterable<String> some) {
    long bits = 0;
    for (var word : some) {
      int at = words.indexOf(word);
      if (at < 0) {
        throw new IllegalArgumentException(code + " is never \"" + word + "\"");
      }
      bits |= 1L << at;
    }
    return bits;
  }
}
