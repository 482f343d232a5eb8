package org.driftward.alerts.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.GreenMailUtil;
import com.icegreen.greenmail.util.ServerSetup;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import jakarta.mail.internet.MimeMessage;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.TestClock;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.notify.Receiver;
import org.driftward.alerts.store.Intake;
import org.driftward.alerts.store.Intake.News;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** From a picture to a letter and a call: real SQL, a real mail server and a real HTTP server. */
@QuarkusTest
@TestProfile(OutreachProfile.class)
@QuarkusTestResource(RealDatabase.class)
@Timeout(120)
class OutreachWholeTest {

  private static final Duration PATIENCE = Duration.ofSeconds(30);

  @Inject Intake intake;
  @Inject EpisodeDesk desk;
  @Inject DeliveryDesk told;
  @Inject Clock clock;

  @ConfigProperty(name = "quarkus.mailer.port")
  int mailPort;

  @ConfigProperty(name = "driftward.alerts.webhooks.pagers.url")
  URI pagers;

  @Test
  void shouldSendALetterThatSaysWhoWhereWhyAndSinceWhen() throws Exception {
    try (var pager = new Receiver(pagers.getPort());
        var mail = new RealMail(mailPort)) {
      ill("V-1");

      awaitState("V-1", Channel.MAIL, State.DELIVERED);
      awaitState("V-1", Channel.WEBHOOK, State.DELIVERED);
      var letter = mail.lettersAbout("V-1").get(0);
      assertThat(letter.getSubject()).isEqualTo("HIGH priority, ward unassigned");
      assertThat(letter.getAllRecipients()[0]).hasToString("charge@ward.example");
      assertThat(letter.getFrom()[0]).hasToString("driftward@hospital.example");
      assertThat(letter.getHeader("Auto-Submitted")).containsExactly("auto-generated");
      assertThat(letter.getMessageID()).endsWith("@driftward.invalid>");
      assertThat(GreenMailUtil.getBody(letter))
          .contains("To: Charge phone (charge nurse, response team)")
          .contains("Stay: V-1, E-V-1-1")
          .contains("NEWS2 8 at")
          .contains("opened by driftward")
          .contains("not a certified medical device");
      assertThat(pager.calls)
          .anySatisfy(call -> assertThat(call.body()).contains("\"episode\":\"E-V-1-1\""));
    }
  }

  @Test
  void shouldDeliverOnceTheMailServerIsBack() {
    try (var pager = new Receiver(pagers.getPort())) {
      ill("V-2");
      awaitState("V-2", Channel.MAIL, State.FAILED);

      try (var mail = new RealMail(mailPort)) {
        ((TestClock) clock).forward(Duration.ofSeconds(6));

        awaitState("V-2", Channel.MAIL, State.DELIVERED);
        assertThat(mail.lettersAbout("V-2")).hasSize(1);
        assertThat(kinds("V-2")).containsExactly("opened");
        assertThat(pager.calls).hasSize(1);
      }
    }
  }

  @Test
  void shouldClimbAtOnceWhenTheMailServerRefuses() {
    try (var pager = new Receiver(pagers.getPort());
        var mail = FickleMailServer.refusing(mailPort, "550 no such mailbox")) {
      ill("V-3");

      await().atMost(PATIENCE).until(() -> kinds("V-3").contains("escalated"));
      assertThat(mail).isNotNull();
      var escalated = desk.story("E-V-3-1").get(1);
      assertThat(escalated.reason()).isEqualTo("no message reached the charge nurse");
      assertThat(escalated.episode().rung()).isEqualTo(1);
      assertThat(pager.calls).hasSize(1);
    }
  }

  @Test
  void shouldTryAgainWhatTheMailServerPutsOff() {
    try (var pager = new Receiver(pagers.getPort());
        var mail = FickleMailServer.refusing(mailPort, "451 greylisted")) {
      ill("V-4");

      awaitState("V-4", Channel.MAIL, State.FAILED);
      assertThat(mail).isNotNull();
      assertThat(kinds("V-4")).containsExactly("opened");
      await().atMost(PATIENCE).until(() -> pager.calls.size() == 1);
    }
  }

  /** RFC 5321, 3.8: a server may say 421 and go at any time, and does to who has been idle. */
  @Test
  void shouldSendEachLetterOverAConnectionOfItsOwn() {
    try (var pager = new Receiver(pagers.getPort());
        var mail = FickleMailServer.impatient(mailPort)) {
      ill("V-6");
      awaitState("V-6", Channel.MAIL, State.DELIVERED);
      ill("V-7");

      awaitState("V-7", Channel.MAIL, State.DELIVERED);
      assertThat(mail).isNotNull();
      assertThat(pager.calls).hasSize(2);
    }
  }

  /** Each of them opens a connection, and none may miss what the server says first. */
  @Test
  void shouldSendManyLettersAtTheFirstTry() {
    try (var pager = new Receiver(pagers.getPort());
        var mail = new RealMail(mailPort)) {
      var many = IntStream.range(0, 100).mapToObj(i -> "M-" + i).toList();
      many.forEach(this::ill);

      await().atMost(PATIENCE.multipliedBy(2)).until(() -> mail.count() >= many.size());
      assertThat(many).allSatisfy(one -> assertThat(mail.lettersAbout(one)).hasSize(1));
      await().atMost(PATIENCE).until(() -> pager.calls.size() >= many.size());
    }
  }

  /** The receiver is called twice and knows by the key that it is the same alarm. */
  @Test
  void shouldRepeatACallWithTheSameKey() {
    try (var pager = new Receiver(pagers.getPort());
        var mail = new RealMail(mailPort)) {
      pager.answers(503);
      ill("V-5");
      awaitState("V-5", Channel.WEBHOOK, State.FAILED);
      ((TestClock) clock).forward(Duration.ofSeconds(6));

      awaitState("V-5", Channel.WEBHOOK, State.DELIVERED);

      assertThat(mail).isNotNull();
      assertThat(pager.calls).hasSize(2);
      assertThat(pager.calls)
          .extracting(call -> call.header("Idempotency-key"))
          .containsOnly(pager.calls.get(0).header("Idempotency-key"));
      assertThat(pager.calls.get(0).body()).isEqualTo(pager.calls.get(1).body());
    }
  }

  private void ill(String encounter) {
    intake.take(
        List.of(new News.Picture(Pictures.of(encounter, clock.instant()).score(8).build())));
  }

  private void awaitState(String encounter, Channel channel, State state) {
    await()
        .atMost(PATIENCE)
        .untilAsserted(
            () ->
                assertThat(told.of("E-" + encounter + "-1"))
                    .filteredOn(one -> one.channel() == channel)
                    .extracting(Delivery::state)
                    .contains(state));
  }

  private List<String> kinds(String encounter) {
    return desk.story("E-" + encounter + "-1").stream().map(EpisodeChange::kind).toList();
  }

  /** GreenMail, a general-purpose mail server for tests. */
  private record RealMail(GreenMail server) implements AutoCloseable {
    RealMail(int port) {
      this(new GreenMail(new ServerSetup(port, "127.0.0.1", ServerSetup.PROTOCOL_SMTP)));
      server.start();
    }

    int count() {
      return server.getReceivedMessages().length;
    }

    /** Others may be tried again meanwhile. */
    List<MimeMessage> lettersAbout(String encounter) {
      return Stream.of(server.getReceivedMessages())
          .filter(letter -> GreenMailUtil.getBody(letter).contains("Stay: " + encounter + ","))
          .toList();
    }

    @Override
    public void close() {
      server.stop();
    }
  }
}
