package org.driftward.deploy.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpHeaders;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.Base64;
import java.util.Map;

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

  /** The elements of an array one by one, for what may be long; the caller closes it. */
  MappingIterator<JsonNode> each(String path) throws IOException {
    return JSON.readerFor(JsonNode.class).readValues(stream(path, "application/json"));
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

  /**
   * What came back, whatever the status.
   *
   * @param body in UTF-8
   */
  record Answer(int status, HttpHeaders headers, String body) {
    JsonNode json() throws IOException {
      return JSON.readTree(body);
    }
  }

  /**
   * Sends and hands back any answer, refusals included.
   *
   * @throws IOException if the server is not there
   */
  Answer exchange(String method, String path, Map<String, String> headers, BodyPublisher body)
      throws IOException {
    var request = request(path).header("Accept", "application/json").method(method, body);
    headers.forEach(request::header);
    try {
      var response = client.send(request.build(), BodyHandlers.ofString(UTF_8));
      return new Answer(response.statusCode(), response.headers(), response.body());
    } catch (ConnectException e) {
      throw new IOException("No server answers at " + base, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("Interrupted", e);
    }
  }

  /** A refusal in words. */
  IOException refused(Answer answer) {
    return new IOException(refusal(answer.status(), answer.body().getBytes(UTF_8)));
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
