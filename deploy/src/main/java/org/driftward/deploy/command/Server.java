package org.driftward.deploy.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Base64;

/** A running Driftward, asked over HTTP with an account's name and password. */
final class Server {

  private static final Duration PATIENCE = Duration.ofMinutes(5);
  private static final ObjectMapper JSON = new ObjectMapper();

  private final HttpClient client =
      HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(10)).build();
  private final URI base;
  private final String authorization;

  Server(URI base, String user, String password) {
    this.base = base;
    this.authorization =
        "Basic " + Base64.getEncoder().encodeToString((user + ":" + password).getBytes(UTF_8));
  }

  /**
   * @param path with its query, such as {@code /api/journal?after=0}
   * @throws IOException if the server is not there or refuses; the message says which
   */
  JsonNode get(String path) throws IOException {
    try (var body = stream(path, "application/json")) {
      return JSON.readTree(body);
    }
  }

  /** The body as it comes, for what may be long; the caller closes it. */
  InputStream stream(String path, String accept) throws IOException {
    return send(request(path).header("Accept", accept).GET().build());
  }

  /** Sends {@code body} and reads the JSON that comes back. */
  JsonNode post(String path, String contentType, BodyPublisher body) throws IOException {
    var request =
        request(path)
            .header("Accept", "application/json")
            .header("Content-Type", contentType)
            .POST(body)
            .build();
    try (var answer = send(request)) {
      return JSON.readTree(answer);
    }
  }

  private HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(base.resolve(path))
        .timeout(PATIENCE)
        .header("Authorization", authorization);
  }

  private InputStream send(HttpRequest request) throws IOException {
    try {
      var response = client.send(request, BodyHandlers.ofInputStream());
      if (response.statusCode() / 100 == 2) {
        return response.body();
      }
      try (var body = response.body()) {
        throw new IOException(refusal(response.statusCode(), body.readAllBytes()));
      }
    } catch (ConnectException e) {
      throw new IOException("No server answers at " + base, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("Interrupted", e);
    }
  }

  private String refusal(int status, byte[] body) {
    if (status == 401) {
      return base + " does not know this account and password";
    }
    if (status == 403) {
      return "This account may not do that";
    }
    return base + " answers " + status + (body.length == 0 ? "" : ": " + new String(body, UTF_8));
  }
}
