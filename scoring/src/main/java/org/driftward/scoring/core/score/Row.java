package org.driftward.scoring.core.score;

import java.util.List;
import java.util.Objects;

/**
 * One row of a published table: the bands of one input, for some patients.
 *
 * <p>The bands tile everything the input can be, whatever else is given; a row with a gap or an
 * overlap cannot be made.
 *
 * @param name the row as the published table calls it
 * @param group rows of one group count once, with the most points among them
 * @param oxygenScale 1 or 2 if the row is for patients on that scale; 0 for both
 * @param ages the row is for
 * @param source the published table, and what in this row does not come from it
 * @param inputs every input the row depends on, as bits
 */
public record Row(
    Input input,
    String name,
    String group,
    int oxygenScale,
    Applicability.Ages ages,
    String source,
    List<Band> bands,
    long inputs) {

  public Row(
      Input input,
      String name,
      String group,
      int oxygenScale,
      Applicability.Ages ages,
      String source,
      List<Band> bands) {
    this(input, name, group, oxygenScale, ages, source, bands, inputs(input, bands));
  }

  public Row {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(group, "group");
    Objects.requireNonNull(source, "source");
    bands = List.copyOf(bands);
    Tiling.check(input, bands);
  }

  private static long inputs(Input input, List<Band> bands) {
    long bits = input.bit();
    for (var band : bands) {
      for (var given : band.given()) {
        bits |= given.input().bit();
      }
    }
    return bits;
  }

  /** Whether the row is for this patient; one bound to an age is not, where the age is unknown. */
  boolean serves(Subject subject) {
    if (oxygenScale != 0 && oxygenScale != subject.oxygenScale()) {
      return false;
    }
    var years = subject.ageYears();
    return ages.equals(Applicability.Ages.ALL) || (years != null && ages.holds(years));
  }

  /** The band that all inputs of the row put it into. */
  Band band(long[] steps) {
    long value = steps[input.place()];
    for (int i = 0; i < bands.size(); i++) {
      var band = bands.get(i);
      if (band.holds(value) && band.given(steps)) {
        return band;
      }
    }
    throw new IllegalStateException(name + " has no band for " + value);
  }

  /** The bands still possible when only the inputs in {@code known} are. */
  List<Band> possible(long[] steps, long known) {
    return bands.stream()
        .filter(band -> band.holds(steps[input.place()]) && band.possible(steps, known))
        .toList();
  }
}
