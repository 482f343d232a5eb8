package org.driftward.deploy.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code import FILE}: sends a file of assessments and waits until its rows are dealt with. */
@Command(
    name = "import",
    description = {
      "Send a file of assessments, CSV or NDJSON, and wait until its rows are dealt with.",
      "The same file again goes on where it was broken off, and doubles nothing."
    })
final class ImportCommand implements Callable<Integer> {

  private static final int FIRST_REFUSALS = 20;

  private @Spec @Nullable CommandSpec spec;
  private @Mixin @Nullable ServerOptions options;

  @Parameters(paramLabel = "FILE", description = "Ends in .csv, .ndjson or .jsonl.")
  private @Nullable Path file;

  @Option(names = "--mapping", description = "How its header is read, if it is not ours.")
  private @Nullable String mapping;

  /**
   * @return 0 if every row was accepted, 1 if one was refused
   */
  @Override
  public Integer call() throws IOException {
    var server = options.server();
    var out = spec.commandLine().getOut();
    var bar = new ProgressBar(spec.commandLine().getErr(), Ansi.AUTO.enabled());
    var id = new FileSender(server, file, mapping, bar).send();
    var done = new ImportWatch(server, id, bar).await();
    bar.end();
    long refused = done.path("rejected").asLong();
    out.printf(
        "%d rows read, %d accepted, %d refused%n",
        done.path("read").asLong(), done.path("accepted").asLong(), refused);
    for (var fault : done.path("faults")) {
      out.println(fault.path("detail").asText());
    }
    if (refused > 0) {
      tellRefused(server, id, refused);
    }
    boolean whole = done.path("state").asText().equals("finished") && refused == 0;
    return whole ? 0 : 1;
  }

  /** The first few only: there may be a million. */
  private void tellRefused(Server server, String id, long refused) throws IOException {
    var out = spec.commandLine().getOut();
    try (var rows = server.each("/api/imports/" + id + "/rejected")) {
      for (int i = 0; i < FIRST_REFUSALS && rows.hasNextValue(); i++) {
        var row = rows.nextValue();
        out.printf(
            "line %d: %s%n",
            row.path("line").asLong(), row.path("faults").path(0).path("detail").asText());
      }
    }
    if (refused > FIRST_REFUSALS) {
      out.printf("and %d more%n", refused - FIRST_REFUSALS);
    }
  }
}
