package org.driftward.deploy.command;

import com.fasterxml.jackson.databind.JsonNode;
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
    out.printf(
        "%d rows read, %d accepted, %d refused%n",
        done.path("read").asLong(), done.path("accepted").asLong(), done.path("rejected").asLong());
    for (var fault : done.path("faults")) {
      out.println(fault.path("detail").asText());
    }
    if (done.path("rejected").asLong() > 0) {
      tellRefused(server.get("/api/imports/" + id + "/rejected"));
    }
    boolean whole =
        done.path("state").asText().equals("finished") && done.path("rejected").asLong() == 0;
    return whole ? 0 : 1;
  }

  private void tellRefused(JsonNode rows) {
    var out = spec.commandLine().getOut();
    int told = 0;
    for (var row : rows) {
      if (told++ == FIRST_REFUSALS) {
        out.printf("and %d more%n", rows.size() - FIRST_REFUSALS);
        return;
      }
      out.printf(
          "line %d: %s%n",
          row.path("line").asLong(), row.path("faults").path(0).path("detail").asText());
    }
  }
}
