package org.driftward.ingest.inbox;

import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.kafka.BatchDirectory;
import org.driftward.ingest.kafka.KafkaEncounterDirectory;
import org.driftward.ingest.kafka.KafkaIntake;
import org.jboss.logging.Logger;

/**
 * Sends each record of the inbox through the gate for it. Whatever it holds, something follows: one
 * bad record never stops the next. Used by one thread.
 */
final class Judge {

  private static final Logger LOG = Logger.getLogger(Judge.class);

  /** Room for the key and the headers of a record beside its value. */
  private static final int ROOM = 4096;

  private static final int KEPT_OF_TOO_LARGE = 1 << 16;

  private final BatchDirectory directory;
  private final HeldIntake intake;
  private final List<Gate> gates;
  private final int largest;

  /**
   * @param largest bytes of one input that are taken
   */
  Judge(
      KafkaIntake house,
      KafkaEncounterDirectory directory,
      IntakeRules rules,
      List<Gate> gates,
      int largest,
      Clock clock) {
    this.directory = new BatchDirectory(directory);
    this.intake = new HeldIntake(house, rules, this.directory, clock);
    this.gates = gates.stream().map(gate -> gate.over(intake, this.directory)).toList();
    this.largest = largest;
  }

  void nextBatch() {
    directory.nextBatch();
  }

  /**
   * @throws UnavailableException if it cannot be judged now; nothing follows, and it may be asked
   *     again
   */
  Judged judge(ConsumerRecord<String, byte[]> inbox) {
    var received = Envelope.open(inbox);
    intake.drop();
    try {
      pass(received);
    } catch (UnavailableException e) {
      throw e;
    } catch (RuntimeException e) {
      LOG.errorf(
          "A record of the inbox is refused because intake failed on it: partition %d, offset %d,"
              + " %s",
          inbox.partition(), inbox.offset(), e.getClass().getName());
      intake.drop();
      refuse(received, Rule.UNSUPPORTED, "intake failed on it; nothing of it was kept");
    }
    var judged = intake.take();
    return fits(judged) ? judged : tooLarge(received);
  }

  private void pass(Received received) {
    if (received.bytes().length > largest) {
      refuse(received, Rule.TOO_MANY, "send at most " + largest + " bytes at once");
      return;
    }
    var bearer = new Bearer(received.origin(), WardScope.EVERY_WARD);
    for (var gate : gates) {
      if (gate.serves(received.target())) {
        gate.pass(received, bearer);
        return;
      }
    }
    refuse(
        received,
        Rule.UNSUPPORTED,
        "the headers say no content that is taken: content-type application/json (kind assessment,"
            + " or encounter with its number as key), application/fhir+json, application/fhir+xml"
            + " or application/hl7-v2+er7");
  }

  private void refuse(Received received, Rule rule, String detail) {
    intake.refuse(received, List.of(new Fault("", rule.word(), detail)));
  }

  /** A record that no topic takes would be sent again for ever. */
  private static boolean fits(Judged judged) {
    return judged.records().stream().allMatch(Judge::fits);
  }

  private static boolean fits(ProducerRecord<String, byte[]> one) {
    return Arrays.stream(Topic.values())
        .filter(topic -> topic.topic().equals(one.topic()))
        .allMatch(topic -> one.value().length <= topic.largestRecord() - ROOM);
  }

  /** Its first part is kept, so that its sender can be found; a part cannot be replayed. */
  private Judged tooLarge(Received received) {
    var bytes = received.bytes();
    var part = Arrays.copyOf(bytes, Math.min(bytes.length, KEPT_OF_TOO_LARGE));
    refuse(
        new Received(
            received.origin(), received.source(), Envelope.NOWHERE, received.contentType(), part),
        Rule.TOO_MANY,
        "what follows from its %d bytes is larger than a record; its first %d are kept"
            .formatted(bytes.length, part.length));
    return intake.take();
  }
}
