package org.driftward.deploy.embedded;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * How to run a program that refuses to run as root, whoever we are. PostgreSQL refuses because a
 * breach of the database would be a breach of the machine.
 *
 * <p>As root we first try a user namespace in which root is nobody; where the kernel or the
 * container forbids it, we become the user {@code nobody} and keep the right to reach the folder.
 */
final class Unprivileged {

  private static final String NOBODY = "65534";
  private static final List<String> NAMESPACE = List.of("unshare", "-U");
  private static final List<String> OTHER_USER =
      List.of(
          "setpriv",
          // Without it access(2) ignores the capability.
          "--securebits=+no_setuid_fixup",
          "--reuid=" + NOBODY,
          "--regid=" + NOBODY,
          "--clear-groups",
          "--inh-caps=+dac_override",
          "--ambient-caps=+dac_override");

  private final List<String> prefix;

  private Unprivileged(List<String> prefix) {
    this.prefix = prefix;
  }

  static Unprivileged onThisMachine() {
    if (!"0".equals(userIdUnder(List.of()))) {
      return new Unprivileged(List.of());
    }
    for (var way : List.of(NAMESPACE, OTHER_USER)) {
      if (NOBODY.equals(userIdUnder(way))) {
        return new Unprivileged(way);
      }
    }
    throw new StartException(
        "PostgreSQL does not run as root, and neither unshare nor setpriv may change the user here."
            + " Start Driftward as another user, or set QUARKUS_DATASOURCE_JDBC_URL.");
  }

  /** The command, with what must stand before it. */
  List<String> command(List<String> command) {
    var all = new ArrayList<>(prefix);
    all.addAll(command);
    return all;
  }

  /** Makes what is there belong to whoever the programs run as. */
  void own(Path path) throws IOException, InterruptedException {
    if (prefix.equals(OTHER_USER)) {
      new ProcessBuilder("chown", "-R", NOBODY + ":" + NOBODY, path.toString()).start().waitFor();
    }
  }

  private static String userIdUnder(List<String> way) {
    var command = new ArrayList<>(way);
    command.addAll(List.of("id", "-u"));
    try {
      var process =
          new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
      var id = new String(process.getInputStream().readAllBytes(), UTF_8).strip();
      return process.waitFor(5, TimeUnit.SECONDS) && process.exitValue() == 0 ? id : "";
    } catch (IOException e) {
      return "";
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return "";
    }
  }
}
