package org.driftward.deploy.bench;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.apache.kafka.common.utils.Utils;
import org.driftward.deploy.whole.Outside;
import org.driftward.deploy.whole.RunningApp;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/**
 * Files of three lengths through the import command into the packaged application, each of the two
 * a process of its own with a small heap, started anew for every file. Prints how fast it went and
 * how much each held on to. One row in a thousand is broken.
 */
@Command(name = "import", description = "Memory and speed of files of three lengths.")
final class ImportBench implements Callable<Integer> {

  private static final Path JAR = Path.of("target", "quarkus-app", "quarkus-run.jar");
  private static final int PATIENTS = 200;
  private static final int BROKEN_EVERY = 1_000;

  @Option(names = "--server-heap", defaultValue = "256m", description = "Of the application.")
  private String serverHeap;

  @Option(names = "--command-heap", defaultValue = "64m", description = "Of the command.")
  private String commandHeap;

  @Option(names = "--unknown", description = "Nobody is admitted, so every row is refused.")
  private boolean unknown;

  @Parameters(paramLabel = "ROWS", description = "Default: 10000 100000 1000000.")
  private List<Integer> lengths = List.of(10_000, 100_000, 1_000_000);

  /** Of one file. */
  private record Told(double seconds, LiveHeap server, LiveHeap command) {}

  @Override
  public Integer call() throws Exception {
    var folder = Files.createTempDirectory("driftward-bench-");
    try (var outside = new Outside(folder.resolve("outside"))) {
      var ingest = new HashMap<>(outside.environment());
      // By the whole application, which also makes the tables and the account.
      try (var app = start(folder.resolve("all"), outside.environment())) {
        Messages.admit(app, unknown ? 0 : PATIENTS);
      }
      ingest.put("DRIFTWARD_ROLES", "ingest");
      System.out.print(
          """
          | rows | file, MB | seconds | rows/s | application: live heap, MB | at most resident, MB \
          | command: live heap, MB | at most resident, MB |
          | --- | --- | --- | --- | --- | --- | --- | --- |
          """);
      for (int rows : lengths) {
        var file = file(folder, rows);
        try (var app = start(folder.resolve("ingest-" + rows), ingest)) {
          print(rows, Files.size(file), bring(app, file));
        }
        Files.delete(file);
      }
    } finally {
      Utils.delete(folder.toFile());
    }
    return 0;
  }

  private RunningApp start(Path data, Map<String, String> environment) {
    return RunningApp.start(data, environment, List.of("-XX:+UseSerialGC", "-Xmx" + serverHeap));
  }

  private static Path file(Path folder, int rows) throws IOException {
    var messages = new Messages(PATIENTS);
    var file = folder.resolve("rows-" + rows + ".csv");
    try (var out = Files.newBufferedWriter(file)) {
      out.write(Messages.Message.HEADER + "\r\n");
      for (int i = 1; i <= rows; i++) {
        var row = rows + "-" + messages.next().row();
        out.write((i % BROKEN_EVERY == 0 ? row.replace(",air,", ",mist,") : row) + "\r\n");
      }
    }
    return file;
  }

  private Told bring(RunningApp app, Path file) throws Exception {
    var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    var log = Files.createTempFile(file.getParent(), "import-", ".log");
    var builder =
        new ProcessBuilder(
                java,
                "-XX:+UseSerialGC",
                "-Xmx" + commandHeap,
                "-jar",
                JAR.toString(),
                "import",
                file.toString())
            .redirectErrorStream(true)
            .redirectOutput(Redirect.to(log.toFile()));
    builder.environment().put("DRIFTWARD_SERVER", app.address().toString());
    builder.environment().put("DRIFTWARD_PASSWORD", RunningApp.ADMIN_PASSWORD);
    long begun = System.nanoTime();
    var process = builder.start();
    try (var server = new LiveHeap(app.pid());
        var command = new LiveHeap(process.pid())) {
      process.waitFor();
      double seconds = (System.nanoTime() - begun) / 1e9;
      var said = Files.readString(log);
      // It ends with 1 because rows were refused; that it read all of them must be seen.
      var sum = said.lines().filter(line -> line.contains(" accepted, ")).findFirst();
      System.err.println(sum.orElseThrow(() -> new IllegalStateException(said)));
      return new Told(seconds, server, command);
    }
  }

  private static void print(int rows, long bytes, Told told) {
    System.out.printf(
        Locale.ROOT,
        "| %,d | %.1f | %.1f | %,.0f | %.1f | %.0f | %.1f | %.0f |%n",
        rows,
        bytes / 1e6,
        told.seconds(),
        rows / told.seconds(),
        told.server().most() / 1e6,
        told.server().resident() / 1e6,
        told.command().most() / 1e6,
        told.command().resident() / 1e6);
  }
}
