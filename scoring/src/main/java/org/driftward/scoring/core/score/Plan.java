package org.driftward.scoring.core.score;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A definition made ready to run: for every oxygen scale and age the rows that serve, by group, and
 * for every input one value from each stretch that the rows tell apart. Thread-safe.
 */
final class Plan {

  /** More combinations than any published table asks for; past it a definition is refused. */
  private static final long MOST_COMBINATIONS = 100_000;

  private final ScoreDefinition definition;
  private final long[][] atoms;
  private final ConcurrentHashMap<Patient, List<List<Row>>> rows = new ConcurrentHashMap<>();

  /** What selects rows. */
  private record Patient(int oxygenScale, int years) {}

  Plan(ScoreDefinition definition) {
    this.definition = definition;
    this.atoms = new long[definition.inputs().size()][];
    for (var input : definition.inputs()) {
      atoms[input.place()] = atoms(input, definition.rows());
    }
    for (var group : byGroup(definition.rows())) {
      long inputs = 0;
      long combinations = 1;
      for (var row : group) {
        inputs |= row.inputs();
      }
      for (long rest = inputs; rest != 0; rest &= rest - 1) {
        combinations *= atoms[Long.numberOfTrailingZeros(rest)].length;
        if (combinations > MOST_COMBINATIONS) {
          throw new IllegalArgumentException(
              group.get(0).name() + " depends on too many inputs at once");
        }
      }
    }
  }

  ScoreDefinition definition() {
    return definition;
  }

  long[][] atoms() {
    return atoms;
  }

  /** The rows that serve the patient, by group, in the order of the table. */
  List<List<Row>> rows(Subject subject) {
    var years = subject.ageYears();
    var patient = new Patient(subject.oxygenScale(), years == null ? -1 : years);
    var known = rows.get(patient);
    return known != null
        ? known
        : rows.computeIfAbsent(
            patient,
            one -> byGroup(definition.rows().stream().filter(row -> row.serves(subject)).toList()));
  }

  private static List<List<Row>> byGroup(List<Row> rows) {
    var groups = new LinkedHashMap<String, List<Row>>();
    for (var row : rows) {
      groups.computeIfAbsent(row.group(), name -> new ArrayList<>()).add(row);
    }
    return List.copyOf(groups.values().stream().map(List::copyOf).toList());
  }

  private static long[] atoms(Input input, List<Row> rows) {
    var values = new TreeSet<Long>();
    for (int word = 0; word < input.words().size(); word++) {
      values.add((long) word);
    }
    if (!input.coded()) {
      for (var row : rows) {
        if (row.input().place() == input.place()) {
          row.bands().forEach(band -> values.add(inside(band)));
        }
      }
    }
    return values.stream().mapToLong(Long::longValue).toArray();
  }

  /** The first value of the band, or its last where it has no first. */
  private static long inside(Band band) {
    if (band.from() > Long.MIN_VALUE) {
      return band.from();
    }
    return band.upto() < Long.MAX_VALUE ? band.upto() : 0;
  }
}
