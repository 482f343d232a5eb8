package org.driftward.deploy.command;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code journal check}: whether the chain holds. */
@Command(name = "journal", description = "The journal of what happened to episodes and plans.")
final class JournalCommand {

  private @Spec @Nullable CommandSpec spec;

  /**
   * @return 0 if the chain is sound, 1 if not
   */
  @Command(name = "check", description = "Recompute the chain and name the first fault.")
  int check(@Mixin ServerOptions options) throws IOException {
    var verdict = options.server().get("/api/journal/check");
    var out = spec.commandLine().getOut();
    if (verdict.path("sound").asBoolean()) {
      out.printf(
          "Sound: %d entries, head %s%n",
          verdict.path("entries").asLong(), verdict.path("head").asText());
      return 0;
    }
    out.printf("Not sound: %s%n", verdict.path("fault").asText());
    return 1;
  }
}
