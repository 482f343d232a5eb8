package org.driftward.deploy.demo;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Finding;

/**
 * How one patient fares: known moments, with straight lines between them. After the last moment the
 * live part begins again, so that the demo never runs dry.
 *
 * @param moments in order of time; the first is before the live part, one is at its beginning
 * @param examinations findings besides the vital signs, each from its time on
 * @param omitted codes that the sets from the live part's beginning on lack
 */
record Course(List<Moment> moments, List<Examination> examinations, Set<String> omitted) {

  /** Findings that hold from a time on and are recorded with every set. */
  record Examination(Duration from, List<Finding> findings) {
    Examination {
      findings = List.copyOf(findings);
    }
  }

  /** A set due at a time. */
  record PlannedSet(Duration at, Vitals truth, List<Finding> examined, Set<String> omitted) {}

  Course {
    moments = List.copyOf(moments);
    examinations = List.copyOf(examinations);
    omitted = Set.copyOf(omitted);
    if (!moments.get(0).at().isNegative()
        || last(moments).at().compareTo(Duration.ofHours(1)) < 0) {
      throw new IllegalArgumentException("a course begins before the live part and ends after it");
    }
  }

  static Course of(String table) {
    return new Course(table.strip().lines().map(Moment::parse).toList(), List.of(), Set.of());
  }

  Course examined(String hours, Finding... findings) {
    var more = new ArrayList<>(examinations);
    more.add(new Examination(Duration.parse(hours), List.of(findings)));
    return new Course(moments, more, omitted);
  }

  Course without(String... codes) {
    return new Course(moments, examinations, Set.of(codes));
  }

  /**
   * Every set due after {@code from} and not after {@code until}, counted from the beginning of the
   * live part.
   */
  List<PlannedSet> sets(Duration from, Duration until) {
    var sets = new ArrayList<PlannedSet>();
    var lap = last(moments).at();
    long lapsBefore = Math.max(0, from.toSeconds() / lap.toSeconds() - 1);
    for (long n = lapsBefore; lap.multipliedBy(n).compareTo(until) <= 0 || n == 0; n++) {
      var shift = lap.multipliedBy(n);
      walk(n == 0 ? moments.get(0).at() : Duration.ZERO, lap)
          .filter(at -> at.plus(shift).compareTo(from) > 0)
          .filter(at -> at.plus(shift).compareTo(until) <= 0)
          .forEach(at -> sets.add(planned(at, at.plus(shift))));
    }
    return sets;
  }

  private Stream<Duration> walk(Duration from, Duration end) {
    return Stream.iterate(from, at -> at.compareTo(end) < 0, at -> nextAfter(at));
  }

  /** A moment of the course is always measured, so that a turn is never missed. */
  private Duration nextAfter(Duration at) {
    var next = at.plus(before(at).every());
    return moments.stream()
        .map(Moment::at)
        .filter(moment -> moment.compareTo(at) > 0 && moment.compareTo(next) < 0)
        .findFirst()
        .orElse(next);
  }

  private PlannedSet planned(Duration at, Duration shifted) {
    var here = before(at);
    var next = moments.stream().filter(m -> m.at().compareTo(at) > 0).findFirst().orElse(here);
    double span = next.at().minus(here.at()).toSeconds();
    double share = span == 0 ? 0 : at.minus(here.at()).toSeconds() / span;
    var examined =
        examinations.stream()
            .filter(examination -> examination.from().compareTo(at) <= 0)
            .reduce((earlier, later) -> later)
            .map(Examination::findings)
            .orElse(List.of());
    return new PlannedSet(
        shifted,
        here.vitals().towards(next.vitals(), share),
        examined,
        at.isNegative() ? Set.of() : omitted);
  }

  private Moment before(Duration at) {
    return moments.stream()
        .filter(moment -> moment.at().compareTo(at) <= 0)
        .reduce((earlier, later) -> later)
        .orElse(moments.get(0));
  }

  private static Moment last(List<Moment> moments) {
    return moments.get(moments.size() - 1);
  }
}
