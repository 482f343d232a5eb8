package org.driftward.dashboard.screen.audit;

import java.util.List;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.dashboard.screen.Wording;
import org.jspecify.annotations.Nullable;

/**
 * One number as it stands on the page.
 *
 * @param value with its unit, or that there was nothing to count
 * @param fraction numerator over denominator, or how many were timed
 * @param counted what is in the numerator
 * @param others what is in the denominator only
 * @param cut whether the lists were cut for length
 */
public record FigureView(
    String name,
    String value,
    String fraction,
    List<Trace> counted,
    List<Trace> others,
    boolean cut) {

  /**
   * The way to what a number rests on.
   *
   * @param path or null where there is no page
   */
  public record Trace(@Nullable String path, String words) {

    static Trace of(String trace) {
      int slash = trace.indexOf('/');
      var id = trace.substring(slash + 1);
      return switch (trace.substring(0, slash)) {
        case "encounter" -> new Trace("/encounters/" + id, id);
        case "episode" -> new Trace("/encounters/" + encounter(id), id);
        default -> new Trace(null, id);
      };
    }

    /** An episode is named after its encounter and its number there: E-V-4103-2. */
    private static String encounter(String episode) {
      int end = episode.lastIndexOf('-');
      return episode.startsWith("E-") && end > 2 ? episode.substring(2, end) : episode;
    }
  }

  static FigureView of(Figure figure) {
    return new FigureView(
        figure.name(),
        value(figure),
        fraction(figure),
        figure.counted().stream().map(Trace::of).toList(),
        figure.others().stream().map(Trace::of).toList(),
        !figure.complete());
  }

  public boolean traced() {
    return !counted.isEmpty() || !others.isEmpty();
  }

  static String value(Figure figure) {
    if (figure.value() == null) {
      return "nothing to count";
    }
    var number = Wording.number(figure.value(), 1);
    return figure.unit().isEmpty() ? number : number + " " + figure.unit();
  }

  private static String fraction(Figure figure) {
    var of = Wording.number(figure.denominator(), 1);
    return figure.numerator() == null
        ? "of " + of
        : Wording.number(figure.numerator(), 1) + "/" + of;
  }
}
