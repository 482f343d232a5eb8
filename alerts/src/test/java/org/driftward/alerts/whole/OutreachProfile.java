package org.driftward.alerts.whole;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.util.Map;
import org.driftward.alerts.Policies;

/** Mail and a webhook, configured; what listens there is the test's to start and stop. */
public class OutreachProfile implements QuarkusTestProfile {

  @Override
  public Map<String, String> getConfigOverrides() {
    try {
      var policy = Files.createTempFile("policy-", ".yaml");
      policy.toFile().deleteOnExit();
      Files.writeString(policy, Policies.outreach());
      return Map.of(
          "driftward.alerts.policy", policy.toString(),
          "driftward.alerts.outreach", "PT0.05S",
          "driftward.alerts.mail-from", "driftward@hospital.example",
          "quarkus.mailer.mock", "false",
          "quarkus.mailer.host", "127.0.0.1",
          "quarkus.mailer.port", freePort(),
          "driftward.alerts.webhooks.pagers.url", "http://127.0.0.1:" + freePort() + "/call",
          "driftward.alerts.webhooks.pagers.secret", "a-secret-of-at-least-32-characters");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String freePort() throws IOException {
    try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return String.valueOf(socket.getLocalPort());
    }
  }
}
