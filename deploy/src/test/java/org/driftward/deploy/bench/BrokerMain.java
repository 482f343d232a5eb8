package org.driftward.deploy.bench;

import java.nio.file.Path;
import org.driftward.deploy.embedded.EmbeddedBroker;
import org.driftward.testing.Logs;

/** The embedded broker as a process of its own; ends when its input ends. */
final class BrokerMain {

  private BrokerMain() {}

  public static void main(String[] arguments) throws Exception {
    Logs.quiet();
    try (var broker = EmbeddedBroker.start(Path.of(arguments[0]), 0, arguments[1])) {
      System.out.println(BrokerProcess.READY + broker.properties().get("kafka.bootstrap.servers"));
      while (System.in.read() >= 0) {
        // Only the end matters.
      }
    }
  }
}
