package org.driftward.alerts.core.audit;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.ingest.contract.Level;
import org.hipparchus.stat.descriptive.rank.Percentile;
import org.hipparchus.stat.descriptive.rank.Percentile.EstimationType;
import org.jspecify.annotations.Nullable;

/** Makes figures that show what they rest on. */
final class Figures {

  static final List<Level> GRAVEST_FIRST = List.of(Level.HIGH, Level.MEDIUM, Level.LOW);

  /** As many traces as a person can follow. */
  private static final int MOST_TRACES = 500;

  private static final double MILLIS_OF_A_MINUTE = Duration.ofMinutes(1).toMillis();

  private Figures() {}

  /** The share of those that meet a condition, in per cent. */
  static <T> Figure share(
      String name, Collection<T> all, Predicate<? super T> met, Function<? super T, String> trace) {
    return ratio(name, "%", 100, all, met, trace);
  }

  private static <T> Figure ratio(
      String name,
      String unit,
      double scale,
      Collection<T> all,
      Predicate<? super T> met,
      Function<? super T, String> trace) {
    var counted = new ArrayList<String>();
    var others = new ArrayList<String>();
    int numerator = 0;
    for (var one : all) {
      boolean in = met.test(one);
      numerator += in ? 1 : 0;
      (in ? counted : others).add(trace.apply(one));
    }
    return figure(name, unit, scale, numerator, all.size(), counted, others);
  }

  /** So many of these over a quantity of something else. */
  static <T> Figure per(
      String name,
      String unit,
      double scale,
      Collection<T> counted,
      double denominator,
      Function<? super T, String> trace) {
    return figure(
        name,
        unit,
        scale,
        counted.size(),
        denominator,
        counted.stream().map(t -> trace.apply(t)).toList(),
        List.of());
  }

  /** A plain number of things. */
  static <T> Figure count(String name, Collection<T> counted, Function<? super T, String> trace) {
    return figure(
        name,
        "",
        1,
        counted.size(),
        1,
        counted.stream().map(t -> trace.apply(t)).toList(),
        List.of());
  }

  static Figure figure(
      String name,
      String unit,
      double scale,
      double numerator,
      double denominator,
      List<String> counted,
      List<String> others) {
    return new Figure(
        name,
        unit,
        denominator == 0 ? null : scale * numerator / denominator,
        numerator,
        denominator,
        shortened(counted),
        shortened(others),
        counted.size() <= MOST_TRACES && others.size() <= MOST_TRACES);
  }

  /**
   * Median and 90th percentile, in minutes, by linear interpolation between the order statistics
   * (type 7 of Hyndman and Fan 1996, the one that spreadsheets and R use).
   *
   * @param traces of the things that were timed, in the same order
   */
  static List<Figure> times(String name, List<Duration> times, List<String> traces) {
    return List.of(
        percentile(name + ", median", 50, times, traces),
        percentile(name + ", 90th percentile", 90, times, traces));
  }

  private static Figure percentile(
      String name, double p, List<Duration> times, List<String> traces) {
    var minutes = times.stream().mapToDouble(t -> t.toMillis() / MILLIS_OF_A_MINUTE).toArray();
    @Nullable Double value =
        minutes.length == 0
            ? null
            : (Double) new Percentile(p).withEstimationType(EstimationType.R_7).evaluate(minutes);
    return new Figure(
        name,
        "min",
        value,
        null,
        minutes.length,
        shortened(traces),
        List.of(),
        traces.size() <= MOST_TRACES);
  }

  /** A measure whose data the house does not have. */
  static Measure lacking(String id, String title, String how, String source, String what) {
    return new Measure(id, title, how, source, List.of(), what);
  }

  private static List<String> shortened(List<String> traces) {
    var distinct = traces.stream().distinct().toList();
    return distinct.size() <= MOST_TRACES ? distinct : distinct.subList(0, MOST_TRACES);
  }
}
