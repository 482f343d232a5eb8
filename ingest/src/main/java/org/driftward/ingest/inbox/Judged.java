package org.driftward.ingest.inbox;

import java.util.List;
import java.util.function.Consumer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ingest.kafka.Tally;

/**
 * What follows from one record of the inbox.
 *
 * @param records to be committed
 * @param counts to be made once they are
 */
record Judged(List<ProducerRecord<String, byte[]>> records, List<Consumer<Tally>> counts) {
  Judged {
    records = List.copyOf(records);
    counts = List.copyOf(counts);
  }
}
