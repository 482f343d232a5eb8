package org.driftward.deploy.whole;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.concurrent.atomic.AtomicInteger;

/** A hospital's interface engine that speaks HL7 v2.5.1 over MLLP, one message a connection. */
final class Gateway {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyyMMddHHmmssZ").withZone(ZoneOffset.UTC);
  private static final AtomicInteger SENT = new AtomicInteger();

  private final RunningApp app;

  Gateway(RunningApp app) {
    this.app = app;
  }

  /**
   * @param event for example {@code ADT^A01}
   * @param segments after the header
   * @return the acknowledgement
   */
  String send(String event, String... segments) {
    var header =
        "MSH|^~\\&|GATEWAY|WEST|DRIFTWARD|HOUSE|%s||%s|%s-%d|P|2.5.1"
            .formatted(time(Instant.now()), event, event.substring(4), SENT.incrementAndGet());
    try (var sender = new MllpSender(app.mllpPort())) {
      return sender.exchange(header + "\r" + String.join("\r", segments));
    }
  }

  /** As HL7 v2 writes a time. */
  static String time(Instant instant) {
    return TIME.format(instant);
  }

  /** PID with the number of a patient and what else the segment says from field 5 on. */
  static String patient(String number, String further) {
    return "PID|1||" + number + "^^^HOUSE^MR||" + further;
  }

  /** PV1 with the place, as ward, room and bed, and the number of the stay. */
  static String visit(String place, String number) {
    return "PV1|1|I|" + place + "|".repeat(16) + number;
  }
}
