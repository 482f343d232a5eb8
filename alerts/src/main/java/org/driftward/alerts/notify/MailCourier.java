package org.driftward.alerts.notify;

import io.quarkus.mailer.Mail;
import io.quarkus.mailer.reactive.ReactiveMailer;
import io.smallrye.mutiny.TimeoutException;
import io.vertx.core.Context;
import io.vertx.core.Vertx;
import io.vertx.ext.mail.SMTPException;
import jakarta.inject.Singleton;
import java.time.ZoneId;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.outreach.Courier;
import org.driftward.alerts.core.outreach.Letter;
import org.driftward.alerts.core.outreach.Outcome;
import org.driftward.alerts.core.outreach.Parcel;
import org.driftward.alerts.core.policy.Outreach;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * Sends a letter to one address. The Message-ID is made of the idempotency key, so a mail system
 * that sees it twice can tell.
 */
@Singleton
public class MailCourier implements Courier {

  private final ReactiveMailer mailer;
  private final Context loop;
  private final AlertsConfig config;
  private final Outreach policy;
  private final ZoneId zone;

  public MailCourier(
      ReactiveMailer mailer, Vertx vertx, AlertsConfig config, Escalation escalation) {
    this.mailer = mailer;
    this.loop = vertx.getOrCreateContext();
    this.config = config;
    this.policy = escalation.policy().outreach();
    this.zone = config.zone().map(ZoneId::of).orElseGet(ZoneId::systemDefault);
  }

  @Override
  public Channel channel() {
    return Channel.MAIL;
  }

  @Override
  public Outcome carry(Parcel parcel) {
    try {
      mailer.send(mail(parcel)).runSubscriptionOn(this::onLoop).await().atMost(policy.timeout());
      return new Outcome.Taken();
    } catch (TimeoutException e) {
      return new Outcome.Failed("the mail server did not answer in time", null);
    } catch (RuntimeException e) {
      return outcome(e);
    }
  }

  /**
   * All letters on the one thread that also reads their connections. Begun on any other, a
   * connection may get its reader only after the server's greeting has come and gone, and then both
   * sides wait for each other.
   */
  private void onLoop(Runnable sending) {
    loop.runOnContext(it -> sending.run());
  }

  private Mail mail(Parcel parcel) {
    var letter = Letter.of(parcel, policy.detail(), zone, config.address().orElse(null));
    var mail =
        Mail.withText(parcel.address(), letter.subject(), letter.text())
            .addHeader("Message-ID", "<" + parcel.key() + "@driftward.invalid>")
            // RFC 3834: nobody's holiday note shall answer.
            .addHeader("Auto-Submitted", "auto-generated");
    config.mailFrom().ifPresent(mail::setFrom);
    return parcel.alarm().episode().level() == Level.HIGH
        ? mail.addHeader("Importance", "high")
        : mail;
  }

  /**
   * RFC 5321: an answer from 500 on is final. Its text may quote the address, so it is not kept.
   */
  private static Outcome outcome(RuntimeException failure) {
    for (@Nullable Throwable t = failure; t != null; t = t.getCause()) {
      if (t instanceof SMTPException smtp) {
        return smtp.isPermanent()
            ? new Outcome.Refused("the mail server refused it, " + smtp.getReplyCode())
            : new Outcome.Failed("the mail server put it off, " + smtp.getReplyCode(), null);
      }
    }
    return new Outcome.Failed("the mail server cannot be reached", null);
  }
}
