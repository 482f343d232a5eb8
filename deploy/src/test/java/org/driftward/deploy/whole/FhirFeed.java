package org.driftward.deploy.whole;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;

/** Another system of the hospital that speaks FHIR with the application, and sees every ward. */
final class FhirFeed {

  static final String JSON = "application/fhir+json";
  static final String XML = "application/fhir+xml";
  static final FhirContext R4 = FhirContext.forR4Cached();

  private static final HttpClient CLIENT =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  private final URI address;

  FhirFeed(RunningApp app) {
    this.address = app.address();
  }

  HttpResponse<String> post(String path, String type, byte[] body) {
    return send(
        HttpRequest.newBuilder(address.resolve(path))
            .header("Content-Type", type)
            .POST(BodyPublishers.ofByteArray(body)));
  }

  HttpResponse<String> post(String path, String type, String body) {
    return post(path, type, body.getBytes(StandardCharsets.UTF_8));
  }

  /** Every Observation of a stay, page by page. */
  List<Observation> observations(String encounter) {
    var found = new ArrayList<Observation>();
    var next = "/fhir/Observation?_count=50&encounter=" + encounter;
    while (next != null) {
      var answer = send(HttpRequest.newBuilder(address.resolve(next)).GET());
      if (answer.statusCode() != 200) {
        throw new AssertionError(answer.statusCode() + ": " + answer.body());
      }
      var page = R4.newJsonParser().parseResource(Bundle.class, answer.body());
      page.getEntry().forEach(entry -> found.add((Observation) entry.getResource()));
      var link = page.getLink("next");
      next = link == null ? null : link.getUrl();
    }
    return found;
  }

  private static HttpResponse<String> send(HttpRequest.Builder request) {
    var credentials = "admin:" + RunningApp.ADMIN_PASSWORD;
    var basic = Base64.getEncoder().encodeToString(credentials.getBytes(StandardCharsets.UTF_8));
    try {
      return CLIENT.send(
          request.timeout(Duration.ofMinutes(2)).header("Authorization", "Basic " + basic).build(),
          BodyHandlers.ofString());
    } catch (IOException e) {
      throw new AssertionError("not answered", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError("interrupted", e);
    }
  }
}
