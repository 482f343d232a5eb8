package org.driftward.deploy.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.driftward.deploy.bench.AlarmLoad.Row;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code deploy/bench alarms}: the table and the figure of docs/alarm-load.md. */
@Command(
    name = "alarms",
    description = "How many alarms the demo hospital would sound, with and without grouping.")
final class AlarmLoadBench implements Callable<Integer> {

  @Option(names = "--days", defaultValue = "30", description = "Simulated days.")
  private int days;

  @Option(names = "--svg", description = "Draws the figure into this file.")
  private @Nullable Path svg;

  @Override
  public Integer call() throws IOException {
    var load = new AlarmLoad(days);
    var rows = load.rows();
    System.out.printf(
        Locale.ROOT, "%d beds, %d days, %d pictures%n%n", load.beds(), days, load.sets());
    System.out.println("| alarms per 100 bed-days | high | medium | low | all | alarms |");
    System.out.println("| --- | ---: | ---: | ---: | ---: | ---: |");
    for (var row : rows) {
      System.out.printf(
          Locale.ROOT,
          "| %s | %.1f | %.1f | %.1f | %.1f | %d |%n",
          row.name(),
          row.per100BedDays(Level.HIGH),
          row.per100BedDays(Level.MEDIUM),
          row.per100BedDays(Level.LOW),
          row.per100BedDays(),
          row.alarms());
    }
    if (svg != null) {
      Files.writeString(svg, Bars.of(rows));
    }
    return 0;
  }

  /** Stacked bars; told apart by shade and by the table beside them. */
  private static final class Bars {

    private static final int WIDTH = 760;
    private static final int LEFT = 250;
    private static final int BAR = 26;
    private static final int STEP = 44;
    private static final List<Level> ORDER = List.of(Level.HIGH, Level.MEDIUM, Level.LOW);
    private static final List<String> INKS = List.of("#b5121b", "#f4c200", "#1fc3d8");

    static String of(List<Row> rows) {
      double most = rows.stream().mapToDouble(Row::per100BedDays).max().orElse(1);
      var svg = new StringBuilder();
      int height = rows.size() * STEP + 60;
      svg.append(
          """
          <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" role="img" \
          aria-label="Alarms per 100 bed-days; the numbers stand in the table">
          <rect width="100%%" height="100%%" fill="#fffdf7"/>
          <g font-family="sans-serif" font-size="14" fill="#182230">
          """
              .formatted(WIDTH, height));
      for (int i = 0; i < rows.size(); i++) {
        bar(svg, rows.get(i), 16 + i * STEP, (WIDTH - LEFT - 80) / most);
      }
      legend(svg, height - 22);
      return svg.append("</g>\n</svg>\n").toString();
    }

    private static void bar(StringBuilder svg, Row row, int y, double scale) {
      svg.append(
          "<text x=\"%d\" y=\"%d\" text-anchor=\"end\">%s</text>%n"
              .formatted(LEFT - 12, y + 18, row.name()));
      double x = LEFT;
      for (int i = 0; i < ORDER.size(); i++) {
        double width = row.per100BedDays(ORDER.get(i)) * scale;
        svg.append(
            String.format(
                Locale.ROOT,
                "<rect x=\"%.1f\" y=\"%d\" width=\"%.1f\" height=\"%d\" fill=\"%s\"/>%n",
                x,
                y,
                width,
                BAR,
                INKS.get(i)));
        x += width;
      }
      svg.append(
          String.format(
              Locale.ROOT,
              "<text x=\"%.1f\" y=\"%d\">%.1f</text>%n",
              x + 8,
              y + 18,
              row.per100BedDays()));
    }

    private static void legend(StringBuilder svg, int y) {
      for (int i = 0; i < ORDER.size(); i++) {
        int x = LEFT + i * 110;
        svg.append(
            "<rect x=\"%d\" y=\"%d\" width=\"14\" height=\"14\" fill=\"%s\"/>%n"
                .formatted(x, y, INKS.get(i)));
        svg.append(
            "<text x=\"%d\" y=\"%d\">%s</text>%n".formatted(x + 20, y + 12, ORDER.get(i).word()));
      }
    }
  }
}
