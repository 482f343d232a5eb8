package org.driftward.dashboard.screen.audit;

import java.util.List;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.dashboard.screen.Wording;

/**
 * One number as it stands on the page.
 *
 * @param value with its unit, or that there was nothing to count
 * @param fraction numerator over denominator, or how many were timed
 * @param timed whether it is a median or a percentile, so that nothing is in a numerator
 * @param counted what is in the numerator
 * @param others what is in the denominator only
 * @param several whether one of them counts more than once
 * @param cut whether the lists were cut for length
 */
public record FigureView(
    String name,
    String value,
    String fraction,
    boolean timed,
    List<Trace> counted,
    List<Trace> others,
    boolean several,
    boolean cut) {

  static FigureView of(Figure figure) {
    return new FigureView(
        figure.name(),
        value(figure),
        fraction(figure),
        figure.numerator() == null,
        figure.counted().stream().map(Trace::of).toList(),
        figure.others().stream().map(Trace::of).toList(),
        several(figure),
        !figure.complete());
  }

  /** More was counted than there are things to name. */
  private static boolean several(Figure figure) {
    double counted = figure.numerator() == null ? figure.denominator() : figure.numerator();
    return figure.complete()
        && counted == Math.rint(counted)
        && counted > figure.counted().size()
        && !figure.counted().isEmpty();
  }

  boolean sameBasisAs(FigureView other) {
    return timed == other.timed && counted.equals(other.counted) && others.equals(other.others);
  }

  public boolean traced() {
    return !counted.isEmpty() || !others.isEmpty();
  }

  static String value(Figure figure) {
    if (figure.value() == null) {
      return "nothing to count";
    }
    boolean share = figure.unit().equals("%");
    var number = Wording.number(figure.value(), share || figure.value() >= 1 ? 1 : 2);
    boolean saidAlready = figure.unit().startsWith("per ") && figure.name().contains(" per ");
    return figure.unit().isEmpty() || saidAlready ? number : number + " " + figure.unit();
  }

  private static String fraction(Figure figure) {
    var of = Wording.number(figure.denominator(), 1);
    return figure.numerator() == null
        ? "of " + of
        : Wording.number(figure.numerator(), 1) + "/" + of;
  }
}
