package org.driftward.deploy.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * The same sets four ways, for a thousand, ten thousand and a hundred thousand encounters: copied
 * by a bare consumer and producer, passed through a topology that does nothing exactly once,
 * scored, and put into a table that a page polls. Prints a table for docs/performance.md.
 *
 * <p>Arguments: how many sets for each number of encounters, then the numbers of encounters.
 */
public final class ScoringBench {

  private static final int SETS = 200_000;
  private static final List<Integer> ENCOUNTERS = List.of(1_000, 10_000, 100_000);
  private static final Payload WARM_UP = new Payload(1_000, 20_000);

  private ScoringBench() {}

  public static void main(String[] arguments) throws Exception {
    int sets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : SETS;
    var numbers = new ArrayList<Integer>();
    for (int i = 1; i < arguments.length; i++) {
      numbers.add(Integer.valueOf(arguments[i]));
    }
    System.err.println("Warming up");
    run(WARM_UP);
    System.out.print(Measured.HEAD);
    for (int encounters : numbers.isEmpty() ? ENCOUNTERS : numbers) {
      System.err.printf(Locale.ROOT, "%,d encounters%n", encounters);
      run(new Payload(encounters, sets)).forEach(measured -> System.out.println(measured.row()));
    }
  }

  private static List<Measured> run(Payload payload) throws Exception {
    var folder = Files.createTempDirectory("driftward-bench-");
    try {
      var measured = new ArrayList<>(KafkaWays.measure(payload, folder));
      measured.add(PolledView.measure(payload, folder.resolve("postgres")));
      return measured;
    } finally {
      delete(folder);
    }
  }

  private static void delete(Path folder) throws Exception {
    try (var paths = Files.walk(folder)) {
      for (var path : paths.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}
