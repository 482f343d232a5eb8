package org.driftward.alerts.notify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.driftward.alerts.Policies;
import org.driftward.alerts.TestClock;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Reason;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.outreach.Outcome;
import org.driftward.alerts.core.outreach.Parcel;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.alerts.core.trigger.Wording;
import org.driftward.alerts.policy.PolicyFile;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Against a real HTTP server: good, failing, slow and missing. */
@Timeout(60)
class WebhookCourierTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");
  private static final String SECRET = "a-secret-of-at-least-32-characters";

  private final Receiver receiver = new Receiver(0);

  @AfterEach
  void close() {
    receiver.close();
  }

  @Test
  void shouldSignWhatItSends() throws Exception {
    var outcome = courier(receiver.url(), "minimal").carry(parcel());

    assertThat(outcome).isEqualTo(new Outcome.Taken());
    var call = receiver.calls.get(0);
    assertThat(call.header("Idempotency-key")).isEqualTo("the-key");
    assertThat(call.header("Driftward-key")).isEqualTo("2026-a");
    assertThat(call.header("Driftward-timestamp")).isEqualTo("1767582000");
    // The receiver's side, as docs/interfaces.md shows it.
    var mac = Mac.getInstance("HmacSHA256");
    mac.init(new SecretKeySpec(SECRET.getBytes(StandardCharsets.UTF_8), "HmacSHA256"));
    var signed = call.header("Driftward-timestamp") + "." + call.body();
    var expected = mac.doFinal(signed.getBytes(StandardCharsets.UTF_8));
    var given = HexFormat.of().parseHex(call.header("Driftward-signature"));
    assertThat(MessageDigest.isEqual(expected, given)).isTrue();
  }

  @Test
  void shouldSayNoMoreThanThePolicyAllows() throws Exception {
    courier(receiver.url(), "minimal").carry(parcel());
    courier(receiver.url(), "full").carry(parcel());

    var minimal = new ObjectMapper().readTree(receiver.calls.get(0).body());
    var full = new ObjectMapper().readTree(receiver.calls.get(1).body());
    assertThat(minimal.get("ward").asText()).isEqualTo("heron");
    assertThat(minimal.get("priority").asText()).isEqualTo("high");
    assertThat(minimal.has("reasons") || minimal.has("encounter")).isFalse();
    assertThat(minimal.toString()).doesNotContain("V-1", "NEWS2 8");
    assertThat(full.at("/reasons/0/words").asText()).isEqualTo("NEWS2 8 at 03:00");
    assertThat(full.get("encounter").asText()).isEqualTo("V-1");
  }

  @Test
  void shouldCountServerErrorsAndTooManyAsWorthAnotherAttempt() {
    receiver.answers(500).answers(503, "7", 0).answers(429, "120", 0).answers(408);
    var courier = courier(receiver.url(), "minimal");

    assertThat(courier.carry(parcel())).isEqualTo(failed("answered 500", null));
    assertThat(courier.carry(parcel())).isEqualTo(failed("answered 503", 7L));
    assertThat(courier.carry(parcel())).isEqualTo(failed("answered 429", 120L));
    assertThat(courier.carry(parcel())).isEqualTo(failed("answered 408", null));
  }

  /** RFC 9110, section 10.2.3: a date is the other form of Retry-After. */
  @Test
  void shouldReadADateToWaitFor() {
    receiver.answers(503, "Mon, 05 Jan 2026 03:00:30 GMT", 0).answers(503, "soon", 0);
    var courier = courier(receiver.url(), "minimal");

    assertThat(courier.carry(parcel())).isEqualTo(failed("answered 503", 30L));
    assertThat(courier.carry(parcel())).isEqualTo(failed("answered 503", null));
  }

  @Test
  void shouldNotRepeatWhatTheReceiverRefuses() {
    receiver.answers(400).answers(404).answers(302);
    var courier = courier(receiver.url(), "minimal");

    assertThat(courier.carry(parcel())).isEqualTo(new Outcome.Refused("answered 400"));
    assertThat(courier.carry(parcel())).isEqualTo(new Outcome.Refused("answered 404"));
    assertThat(courier.carry(parcel())).isEqualTo(new Outcome.Refused("answered 302"));
  }

  @Test
  void shouldNotWaitForASlowReceiver() {
    receiver.answers(202, "", 5_000);

    var outcome = courier(receiver.url(), "minimal").carry(parcel());

    assertThat(outcome).isEqualTo(failed("no answer in time", null));
  }

  @Test
  void shouldSayThatNobodyListens() {
    receiver.close();

    var outcome = courier(receiver.url(), "minimal").carry(parcel());

    assertThat(outcome).isEqualTo(failed("no connection", null));
  }

  @Test
  void shouldRefuseToSendInTheClearOrWithAShortSecret() {
    assertThatThrownBy(() -> courier("http://pager.example/call", "minimal"))
        .hasMessageContaining("pagers")
        .hasMessageContaining("HTTPS");
    assertThatThrownBy(() -> courier(receiver.url(), "minimal", "short"))
        .hasMessageContaining("pagers")
        .hasMessageNotContaining("short ");
  }

  private static Outcome failed(String why, @Nullable Long seconds) {
    return new Outcome.Failed(why, seconds == null ? null : Duration.ofSeconds(seconds));
  }

  private static WebhookCourier courier(String url, String detail) {
    return courier(url, detail, SECRET);
  }

  private static WebhookCourier courier(String url, String detail, String secret) {
    var properties = new HashMap<String, String>();
    properties.put("driftward.alerts.address", "https://driftward.example");
    properties.put("driftward.alerts.webhooks.pagers.url", url);
    properties.put("driftward.alerts.webhooks.pagers.key-id", "2026-a");
    properties.put("driftward.alerts.webhooks.pagers.secret", secret);
    var config =
        new SmallRyeConfigBuilder()
            .addDefaultInterceptors()
            .addDiscoveredConverters()
            .withMapping(AlertsConfig.class)
            .withSources(new PropertiesConfigSource(properties, "test", 100))
            .build()
            .getConfigMapping(AlertsConfig.class);
    var text =
        Policies.outreach()
            .replace("detail: full", "detail: " + detail)
            .replace("timeout: PT10S", "timeout: PT1S");
    var policy = PolicyFile.parse("test", text).policy();
    var catalogue = Catalogue.shipped();
    var wording = new Wording(catalogue, ZoneOffset.UTC);
    var escalation = new Escalation(policy, new Triggers(policy.triggers(), catalogue, wording));
    return new WebhookCourier(config, escalation, new TestClock(NOW));
  }

  private static Parcel parcel() {
    var episode =
        new Episode(
            "E-V-1-1",
            1,
            "V-1",
            "heron",
            "A2",
            EpisodeState.OPEN,
            Level.HIGH,
            null,
            null,
            NOW,
            NOW.plusSeconds(300),
            Awaiting.ACKNOWLEDGEMENT,
            0,
            "charge nurse",
            List.of(new Reason("score-news2", Level.HIGH, "NEWS2 8 at 03:00", NOW)),
            null,
            null,
            null,
            null);
    var alarm = new EpisodeChange(7, NOW, "opened", "driftward", null, null, episode);
    return new Parcel("the-key", Channel.WEBHOOK, "Team", "pagers", alarm, List.of(alarm));
  }
}
