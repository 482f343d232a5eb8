package org.driftward.deploy.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/**
 * The same sets four ways, for a thousand, ten thousand and a hundred thousand encounters: copied
 * by a bare consumer and producer, passed through a topology that does nothing exactly once,
 * scored, and put into a table that a page polls. Prints a table for docs/performance.md.
 */
@Command(name = "scoring", description = "Scoring beside what it is built on, and beside SQL.")
final class ScoringBench implements Callable<Integer> {

  @Option(
      names = "--sets",
      description = "For each number of encounters (default: ${DEFAULT-VALUE}).")
  private int sets = 200_000;

  @Option(
      names = "--warm-up",
      description =
          "Sets before these that are not counted, while the compilers of the process and of the"
              + " broker do their work (default: ${DEFAULT-VALUE}).")
  private int warmUp = 100_000;

  @Option(names = "--only", defaultValue = "", description = "Ways whose name holds this.")
  private String only = "";

  @Parameters(paramLabel = "ENCOUNTERS", description = "Default: 1000 10000 100000.")
  private List<Integer> encounters = List.of(1_000, 10_000, 100_000);

  @Override
  public Integer call() throws Exception {
    System.out.print(Measured.HEAD);
    for (int number : encounters) {
      System.err.printf(Locale.ROOT, "%,d encounters%n", number);
      run(new Payload(number, warmUp + sets));
    }
    return 0;
  }

  private void run(Payload payload) throws Exception {
    var folder = Files.createTempDirectory("driftward-bench-");
    try {
      Ways.measure(payload, warmUp, folder, way -> way.contains(only), ScoringBench::tell);
    } finally {
      delete(folder);
    }
  }

  private static void tell(Measured measured) {
    System.out.println(measured.row());
  }

  private static void delete(Path folder) throws Exception {
    try (var paths = Files.walk(folder)) {
      for (var path : paths.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    }
  }
}
