package org.driftward.scoring.core.score;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * One early-warning score, as its file defines it.
 *
 * @param id stable, for example {@code news2}
 * @param title as people call it
 * @param version of the published score and of this file
 * @param rank the lowest of the scores that apply to a patient leads
 * @param source the published table
 * @param notes limits and readings of the source, in words, for people
 * @param shown when the score is given
 * @param lowerIsWorse whether a lower total is the more worrying one
 * @param rows the published table in its order; empty for a ratio
 * @param risks classes in order of precedence
 */
public record ScoreDefinition(
    String id,
    String title,
    String version,
    int rank,
    String source,
    List<String> notes,
    Applicability applicability,
    Shown shown,
    boolean lowerIsWorse,
    List<Input> inputs,
    List<Row> rows,
    Aggregate aggregate,
    List<RiskClass> risks) {

  /** When a score that applies is given. */
  public enum Shown {
    /** Always, with nothing recorded as its full range. */
    ALWAYS,
    /** Once one of its inputs is known. */
    BEGUN,
    /** Only when all its inputs are known. */
    COMPLETE
  }

  public ScoreDefinition {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(version, "version");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(applicability, "applicability");
    notes = List.copyOf(notes);
    inputs = List.copyOf(inputs);
    rows = List.copyOf(rows);
    risks = List.copyOf(risks);
    if (inputs.isEmpty()) {
      throw new IllegalArgumentException(id + " has no inputs");
    }
    if (aggregate instanceof Aggregate.Ratio != rows.isEmpty()) {
      throw new IllegalArgumentException(id + ": a ratio, and only a ratio, has no rows");
    }
    if (aggregate instanceof Aggregate.Ratio && shown != Shown.COMPLETE) {
      throw new IllegalArgumentException(id + ": a ratio is shown only when complete");
    }
    if (risks.isEmpty() || !risks.get(risks.size() - 1).always()) {
      throw new IllegalArgumentException(id + ": the last risk class must hold always");
    }
    if (!rows.isEmpty()) {
      var idle = idle(applicability, inputs, rows);
      if (idle != null) {
        throw new IllegalArgumentException(id + ": " + idle);
      }
    }
  }

  /** The first input that no row reads for some patient the score applies to, in words. */
  private static @Nullable String idle(
      Applicability applicability, List<Input> inputs, List<Row> rows) {
    for (int scale = 1; scale <= 2; scale++) {
      for (var years : years(applicability, rows)) {
        var subject = new Subject(years < 0 ? null : years, scale, Set.of());
        long read = 0;
        for (var row : rows) {
          if (row.serves(subject)) {
            read |= row.inputs();
          }
        }
        for (var input : inputs) {
          if ((read & input.bit()) == 0) {
            var age = years < 0 ? "unknown age" : "age " + years;
            return "no row reads " + input.code() + " at oxygen scale " + scale + " and " + age;
          }
        }
      }
    }
    return null;
  }

  /** One age from every stretch that the rows tell apart; -1 for an unknown one. */
  private static Set<Integer> years(Applicability applicability, List<Row> rows) {
    var years = new TreeSet<Integer>();
    years.add(applicability.ages().from());
    for (var row : rows) {
      years.add(row.ages().from());
      if (row.ages().upto() < Integer.MAX_VALUE) {
        years.add(row.ages().upto() + 1);
      }
    }
    years.removeIf(age -> !applicability.mayCover(age));
    if (applicability.unknownAge()) {
      years.add(-1);
    }
    return years;
  }
}
