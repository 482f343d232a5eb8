package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.driftward.dashboard.core.Total;

/**
 * The way a score has gone, drawn small: a line through the least possible totals and, where a set
 * was incomplete, a bar up to the greatest. Drawn in a box of {@value #WIDTH} by {@value #HEIGHT};
 * more points stand higher.
 *
 * @param path of the line, in the path language of SVG; empty below two sets
 * @param dots one for each set, the newest last
 */
public record Trail(String path, List<Dot> dots) {

  static final double WIDTH = 96;
  static final double HEIGHT = 44;

  /** A total past this is drawn at the upper edge. Engineering choice. */
  private static final double TOP = 12;

  /** One set: its place, the least total, and the greatest. */
  public record Dot(double x, double low, double high) {
    public boolean sure() {
      return low == high;
    }
  }

  public Trail {
    dots = List.copyOf(dots);
  }

  /** The totals placed by their clinical time, oldest first. */
  public static Trail of(List<Total> totals) {
    if (totals.isEmpty()) {
      return new Trail("", List.of());
    }
    Instant first = totals.get(0).asOf();
    Instant last = totals.get(totals.size() - 1).asOf();
    double whole = Math.max(1, Duration.between(first, last).toSeconds());
    var dots = new ArrayList<Dot>();
    var path = new StringBuilder();
    for (Total total : totals) {
      double part = Duration.between(first, total.asOf()).toSeconds() / whole;
      double x = round(totals.size() == 1 ? WIDTH : part * WIDTH);
      var dot = new Dot(x, height(total.low()), height(total.high()));
      path.append(
          String.format(Locale.ROOT, "%s%.1f %.1f", path.isEmpty() ? "M" : "L", x, dot.low()));
      dots.add(dot);
    }
    return new Trail(dots.size() < 2 ? "" : path.toString(), dots);
  }

  public Dot newest() {
    return dots.get(dots.size() - 1);
  }

  private static double height(BigDecimal total) {
    double clipped = Math.max(0, Math.min(TOP, total.doubleValue()));
    return round(HEIGHT - clipped / TOP * HEIGHT);
  }

  private static double round(double length) {
    return Math.round(length * 10) / 10.0;
  }
}
