package org.driftward.alerts.notify;

import java.net.InetAddress;
import java.net.URI;
import java.net.UnknownHostException;
import org.driftward.alerts.config.AlertsConfig;

/** Where one program is called and what signs the calls. Says nothing of its secret. */
record Webhook(URI url, String keyId, String secret) {

  private static final int SHORTEST_SECRET = 32;

  /**
   * @throws IllegalStateException naming the webhook whose settings make no sense, never the secret
   */
  static Webhook of(String name, AlertsConfig.Webhook config) {
    var url = URI.create(config.url());
    boolean safe =
        "https".equals(url.getScheme()) || ("http".equals(url.getScheme()) && isThisMachine(url));
    if (!safe) {
      throw new IllegalStateException("webhook " + name + ": its URL is not HTTPS");
    }
    if (config.secret().length() < SHORTEST_SECRET) {
      throw new IllegalStateException(
          "webhook " + name + ": its secret is shorter than " + SHORTEST_SECRET);
    }
    return new Webhook(url, config.keyId(), config.secret());
  }

  private static boolean isThisMachine(URI url) {
    try {
      return url.getHost() != null && InetAddress.getByName(url.getHost()).isLoopbackAddress();
    } catch (UnknownHostException e) {
      return false;
    }
  }

  @Override
  public String toString() {
    return "Webhook[" + keyId + "]";
  }
}
