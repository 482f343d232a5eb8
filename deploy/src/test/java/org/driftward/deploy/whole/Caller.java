package org.driftward.deploy.whole;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpHeaders;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A program that calls the HTTP interface, with the name and password of an account or without. */
public final class Caller {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final HttpClient CLIENT =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  private final URI address;
  private final @Nullable String credentials;

  Caller(URI address, @Nullable String account, @Nullable String password) {
    this.address = address;
    this.credentials =
        account == null
            ? null
            : "Basic "
                + Base64.getEncoder()
                    .encodeToString((account + ":" + password).getBytes(StandardCharsets.UTF_8));
  }

  /**
   * What came back.
   *
   * @param type media type, or an empty text
   * @param headers all of them
   */
  public record Answer(int status, String type, HttpHeaders headers, String body) {
    public Optional<String> header(String name) {
      return headers.firstValue(name);
    }

    public JsonNode json() {
      try {
        return JSON.readTree(body);
      } catch (JsonProcessingException e) {
        throw new AssertionError("not JSON: " + body, e);
      }
    }
  }

  public Answer get(String path) {
    return send("GET", path, BodyPublishers.noBody());
  }

  public Answer post(String path, String json) {
    return send("POST", path, BodyPublishers.ofString(json));
  }

  public Answer put(String path, String json) {
    return send("PUT", path, BodyPublishers.ofString(json));
  }

  /** Anything else than JSON, or with further header fields. */
  public Answer send(String method, String path, Map<String, String> headers, String body) {
    try {
      return exchange(method, path, headers, BodyPublishers.ofString(body));
    } catch (IOException e) {
      throw new AssertionError(method + " " + path + " is not answered", e);
    }
  }

  /** Whether the call is answered with 200, however it fails otherwise. */
  boolean answers(String path) {
    try {
      return exchange("GET", path, BodyPublishers.noBody()).status() == 200;
    } catch (IOException e) {
      return false;
    }
  }

  private Answer send(String method, String path, BodyPublisher body) {
    try {
      return exchange(method, path, body);
    } catch (IOException e) {
      throw new AssertionError(method + " " + path + " is not answered", e);
    }
  }

  private Answer exchange(String method, String path, BodyPublisher body) throws IOException {
    return exchange(method, path, Map.of("Content-Type", "application/json"), body);
  }

  private Answer exchange(
      String method, String path, Map<String, String> headers, BodyPublisher body)
      throws IOException {
    var request =
        HttpRequest.newBuilder(address.resolve(path))
            .timeout(Duration.ofSeconds(60))
            .method(method, body);
    headers.forEach(request::header);
    if (credentials != null) {
      request.header("Authorization", credentials);
    }
    try {
      var response = CLIENT.send(request.build(), BodyHandlers.ofString());
      var type = response.headers().firstValue("Content-Type").orElse("");
      return new Answer(response.statusCode(), type, response.headers(), response.body());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }
}
