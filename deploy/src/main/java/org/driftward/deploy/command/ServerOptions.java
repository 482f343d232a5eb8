package org.driftward.deploy.command;

import java.net.URI;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which server to ask, and as whom. The password is best left to the environment or the prompt. */
final class ServerOptions {

  @Option(
      names = "--server",
      defaultValue = "${DRIFTWARD_SERVER:-http://127.0.0.1:8080}",
      description = "Where it listens (default: ${DEFAULT-VALUE}, or DRIFTWARD_SERVER).")
  private @Nullable URI server;

  @Option(
      names = "--user",
      defaultValue = "${DRIFTWARD_USER:-admin}",
      description = "The account (default: ${DEFAULT-VALUE}, or DRIFTWARD_USER).")
  private @Nullable String user;

  @Option(
      names = "--password",
      interactive = true,
      arity = "0..1",
      defaultValue = "${DRIFTWARD_PASSWORD:-}",
      description = "Asked for if given without a value; otherwise DRIFTWARD_PASSWORD.")
  private char @Nullable [] password;

  Server server() {
    if (server == null || user == null) {
      throw new IllegalStateException("options are read before the line was parsed");
    }
    return new Server(server, user, password == null ? "" : String.valueOf(password));
  }
}
