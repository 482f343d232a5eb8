package org.driftward.deploy.whole;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.GreenMailUtil;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A real mail server that keeps what it takes, and knows a repetition by its Message-ID. */
final class LetterBox implements AutoCloseable {

  private final GreenMail server;

  LetterBox() {
    server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
    server.start();
  }

  int port() {
    return server.getSmtp().getPort();
  }

  /** The texts of each idempotency key, oldest first. */
  Map<String, List<String>> byKey() {
    Map<String, List<String>> letters = new TreeMap<>();
    for (var letter : server.getReceivedMessages()) {
      letters.computeIfAbsent(key(letter), it -> new ArrayList<>()).add(text(letter));
    }
    return letters;
  }

  private static String key(MimeMessage letter) {
    try {
      return letter.getMessageID().replaceAll("<(.*)@.*>", "$1");
    } catch (MessagingException e) {
      throw new AssertionError("a letter without a Message-ID", e);
    }
  }

  private static String text(MimeMessage letter) {
    return GreenMailUtil.getBody(letter);
  }

  @Override
  public void close() {
    server.stop();
  }
}
