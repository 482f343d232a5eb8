package org.driftward.deploy.command;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.Map;

/** Asks how far an import is until it is over. */
final class ImportWatch {

  private static final long PAUSE_MILLIS = 500;

  private final Server server;
  private final String id;
  private final ProgressBar bar;

  ImportWatch(Server server, String id, ProgressBar bar) {
    this.server = server;
    this.id = id;
    this.bar = bar;
  }

  JsonNode await() throws IOException {
    while (true) {
      var answer =
          Patience.alsoThroughARestart(bar)
              .insist(
                  () ->
                      server.exchange(
                          "GET", "/api/imports/" + id, Map.of(), BodyPublishers.noBody()));
      if (answer.status() != 200) {
        throw server.refused(answer);
      }
      var now = answer.json();
      bar.show(
          now.path("read").asLong() + " rows read, " + now.path("rejected").asLong() + " refused",
          now.path("done").asLong(),
          now.path("received").asLong());
      if (!now.path("state").asText().equals("running")) {
        return now;
      }
      pause();
    }
  }

  private static void pause() throws IOException {
    try {
      Thread.sleep(PAUSE_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("Interrupted", e);
    }
  }
}
