package org.driftward.alerts.notify;

import jakarta.inject.Singleton;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.HttpTimeoutException;
import java.time.Clock;
import java.util.Map;
import java.util.TreeMap;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.outreach.CallBody;
import org.driftward.alerts.core.outreach.Courier;
import org.driftward.alerts.core.outreach.Outcome;
import org.driftward.alerts.core.outreach.PagerAddress;
import org.driftward.alerts.core.outreach.Parcel;
import org.driftward.alerts.core.outreach.Signature;
import org.driftward.alerts.core.policy.Outreach;

/**
 * Calls a program, signed. Redirects are not followed: the signature is meant for one place. How a
 * receiver checks the call stands in {@code docs/interfaces.md}.
 */
@Singleton
public class WebhookCourier implements Courier {

  private static final int REQUEST_TIMEOUT = 408;
  private static final int TOO_MANY_REQUESTS = 429;

  private final HttpClient client;
  private final Map<String, Webhook> webhooks = new TreeMap<>();
  private final AlertsConfig config;
  private final Outreach policy;
  private final Clock clock;

  public WebhookCourier(AlertsConfig config, Escalation escalation, Clock clock) {
    this.config = config;
    this.policy = escalation.policy().outreach();
    this.clock = clock;
    config.webhooks().forEach((name, webhook) -> webhooks.put(name, Webhook.of(name, webhook)));
    this.client =
        HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(policy.timeout())
            .build();
  }

  @Override
  public Channel channel() {
    return Channel.WEBHOOK;
  }

  @Override
  public Outcome carry(Parcel parcel) {
    var webhook = webhooks.get(PagerAddress.of(parcel.address()).webhook());
    if (webhook == null) {
      return new Outcome.Refused("no webhook of this name is configured any more");
    }
    try {
      return outcome(client.send(request(parcel, webhook), BodyHandlers.discarding()));
    } catch (HttpTimeoutException e) {
      return new Outcome.Failed("no answer in time", null);
    } catch (IOException e) {
      return new Outcome.Failed("no connection", null);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return new Outcome.Failed("this process is stopping", null);
    }
  }

  private HttpRequest request(Parcel parcel, Webhook webhook) {
    var body = CallBody.of(parcel, policy.detail(), config.address().orElse(null));
    long timestamp = clock.instant().getEpochSecond();
    return HttpRequest.newBuilder(webhook.url())
        .timeout(policy.timeout())
        .header("Content-Type", "application/json")
        .header("Idempotency-Key", parcel.key())
        .header("Driftward-Key", webhook.keyId())
        .header("Driftward-Timestamp", String.valueOf(timestamp))
        .header("Driftward-Signature", Signature.of(webhook.secret(), timestamp, body))
        .POST(BodyPublishers.ofString(body))
        .build();
  }

  private Outcome outcome(HttpResponse<Void> answer) {
    int status = answer.statusCode();
    var words = "answered " + status;
    if (status / 100 == 2) {
      return new Outcome.Taken();
    }
    boolean later = status / 100 == 5 || status == TOO_MANY_REQUESTS || status == REQUEST_TIMEOUT;
    return later
        ? new Outcome.Failed(words, RetryAfter.of(answer.headers(), clock.instant()))
        : new Outcome.Refused(words);
  }
}
