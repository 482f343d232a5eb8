package org.driftward.deploy.command;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code rescore try} and {@code rescore adopt}: another policy, first beside the one in force. */
@Command(
    name = "rescore",
    description = "Score everything so far by another policy, and adopt it if that is wanted.")
final class RescoreCommand {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String PATH = "/api/rescores";
  private static final long PAUSE_MILLIS = 500;

  private @Spec @Nullable CommandSpec spec;

  /**
   * @return 0 if it finished, with differences or without; 1 if it failed
   */
  @Command(name = "try", description = "Score the log again and report every difference.")
  int attempt(
      @Mixin ServerOptions options,
      @Option(
              names = "--from",
              required = true,
              description = "When it would take effect, ISO 8601.")
          Instant from,
      @Option(names = "--policy", required = true, description = "The policy file.") Path policy,
      @Option(names = "--score", description = "A score definition; may be given several times.")
          @Nullable List<Path> scores,
      @Option(names = "--out", description = "Where to write the differences, as CSV.")
          @Nullable Path out)
      throws IOException {
    var server = options.server();
    var body = JSON.createObjectNode().put("from", from.toString());
    body.put("policy", Files.readString(policy));
    var texts = body.putArray("scores");
    for (var score : scores == null ? List.<Path>of() : scores) {
      texts.add(Files.readString(score));
    }
    var begun = server.post(PATH, "application/json", BodyPublishers.ofString(body.toString()));
    var path = PATH + "/" + begun.path("id").asText();
    var ended = ended(server, path);
    if (ended.path("state").asText().equals("failed")) {
      print("Failed: %s%n", ended.path("failure").asText());
      return 1;
    }
    report(ended);
    if (out != null) {
      try (var table = server.stream(path + "/differences", "text/csv")) {
        Files.copy(table, out, StandardCopyOption.REPLACE_EXISTING);
      }
      print("Differences: %s%n", out);
    }
    print("To put it into force: rescore adopt %s%n", ended.path("id").asText());
    return 0;
  }

  /**
   * @return 0 if it is in force
   */
  @Command(name = "adopt", description = "Put the edition of a finished re-scoring into force.")
  int adopt(
      @Mixin ServerOptions options,
      @Parameters(paramLabel = "ID", description = "As rescore try has said it.") String id)
      throws IOException {
    var adopted =
        options
            .server()
            .post(PATH + "/" + id + "/adopt", "application/json", BodyPublishers.ofString("{}"));
    print(
        "Adopted: %s, in force for what was taken from %s on%n",
        adopted.path("version").asText(), adopted.path("from").asText());
    return 0;
  }

  private static JsonNode ended(Server server, String path) throws IOException {
    try {
      var view = server.get(path);
      while (view.path("state").asText().equals("running")) {
        Thread.sleep(PAUSE_MILLIS);
        view = server.get(path);
      }
      return view;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("Interrupted", e);
    }
  }

  private void report(JsonNode view) {
    var counts = view.path("counts");
    print(
        "%d records, %d encounters, %d moments; %d of them are judged otherwise, of %d encounters%n",
        counts.path("records").asLong(),
        counts.path("encounters").asLong(),
        counts.path("moments").asLong(),
        counts.path("differing").asLong(),
        counts.path("differingEncounters").size());
    for (var kind : counts.path("differences").properties()) {
      print("  %s: %d%n", kind.getKey(), kind.getValue().asLong());
    }
    int gaps = counts.path("plansMissing").size();
    if (gaps > 0) {
      print("Of %d encounters an earlier care plan is no longer in the log%n", gaps);
    }
  }

  private void print(String format, Object... values) {
    if (spec == null) {
      throw new IllegalStateException("a command runs from a parsed line");
    }
    spec.commandLine().getOut().printf(format, values);
  }
}
