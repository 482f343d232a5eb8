package org.driftward.deploy.bench;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Supplier;
import org.driftward.deploy.whole.MllpSender;

/** HL7 v2 over MLLP, each sender on a connection of its own and waiting for its answer. */
final class MllpFeed implements Feed {

  private static final int SENDERS = 16;

  private final int port;
  private final Supplier<String> messages;
  private final int assessments;
  private final Queue<MllpSender> idle = new ConcurrentLinkedQueue<>();

  /**
   * @param assessments how many each message holds
   */
  MllpFeed(int port, Supplier<String> messages, int assessments) {
    this.port = port;
    this.messages = messages;
    this.assessments = assessments;
  }

  @Override
  public String name() {
    return "HL7 v2 over MLLP, five results";
  }

  @Override
  public int senders() {
    return SENDERS;
  }

  @Override
  public int send() {
    var known = idle.poll();
    var sender = known == null ? new MllpSender(port) : known;
    var answer = sender.exchange(messages.get());
    if (!answer.contains("MSA|AA|")) {
      throw new IllegalStateException(answer);
    }
    idle.add(sender);
    return assessments;
  }

  @Override
  public void close() {
    idle.forEach(MllpSender::close);
  }
}
