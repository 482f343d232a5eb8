package org.driftward.ingest.desk;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.driftward.ground.failure.Isolation;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.kafka.RecordHeaders;
import org.driftward.ingest.store.DeskLedger.Batch;
import org.driftward.ingest.store.DeskLedger.Slot;
import org.driftward.ingest.store.DeskLedger.Span;
import org.driftward.ingest.store.FeedMinute;

/** Turns polled records into what the desk keeps. */
final class RecordReader {

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<Rejection> REJECTION = JsonFormat.of(Rejection.class);

  /** Of records that were written before origins were. */
  private static final String UNKNOWN = "unknown";

  private final Map<FeedMinute.Key, FeedMinute> minutes = new HashMap<>();
  private final ArrayList<Rejection> refusals = new ArrayList<>();

  private RecordReader() {}

  /**
   * @param setAside takes a record that nobody can read; it must not hold up the desk
   */
  static Batch read(
      ConsumerRecords<String, byte[]> records,
      BiConsumer<ConsumerRecord<String, byte[]>, Throwable> setAside) {
    var reader = new RecordReader();
    var spans = new HashMap<Slot, Span>();
    for (var partition : records.partitions()) {
      var some = records.records(partition);
      spans.put(
          new Slot(partition.topic(), partition.partition()),
          new Span(some.get(0).offset(), some.get(some.size() - 1).offset() + 1));
      Isolation.apart(some, reader::take, setAside);
    }
    return new Batch(spans, reader.minutes.values(), reader.refusals);
  }

  private void take(ConsumerRecord<String, byte[]> kafkaRecord) {
    if (kafkaRecord.value() == null) {
      return;
    }
    if (kafkaRecord.topic().equals(Topic.REJECTED.topic())) {
      takeRejection(REJECTION.read(kafkaRecord.value()));
    } else if (kafkaRecord.topic().equals(Topic.ASSESSMENTS.topic())) {
      takeAssessment(ASSESSMENT.read(kafkaRecord.value()), kafkaRecord);
    } else {
      add(FeedMinute.move(sourceOf(origin(kafkaRecord)), origin(kafkaRecord), at(kafkaRecord)));
    }
  }

  private void takeRejection(Rejection rejection) {
    refusals.add(rejection);
    if (rejection.replayOf() == null) {
      add(FeedMinute.refused(rejection.source(), rejection.origin(), rejection.receivedAt()));
    }
  }

  private void takeAssessment(Assessment assessment, ConsumerRecord<String, byte[]> kafkaRecord) {
    add(
        FeedMinute.assessment(
            assessment.source(),
            origin(kafkaRecord),
            assessment.takenAt(),
            assessment.recordedAt(),
            at(kafkaRecord)));
  }

  private void add(FeedMinute minute) {
    minutes.merge(minute.key(), minute, FeedMinute::plus);
  }

  /** A change of an encounter does not say how it came; its sender does. */
  private static Source sourceOf(String origin) {
    if (origin.startsWith("mllp") || origin.startsWith("hl7")) {
      return Source.HL7;
    }
    return origin.startsWith("fhir") ? Source.FHIR : Source.BEDSIDE;
  }

  private static String origin(ConsumerRecord<String, byte[]> kafkaRecord) {
    return header(kafkaRecord, RecordHeaders.ORIGIN).orElse(UNKNOWN);
  }

  private static Instant at(ConsumerRecord<String, byte[]> kafkaRecord) {
    long millis =
        header(kafkaRecord, RecordHeaders.ACCEPTED_AT)
            .map(Long::parseLong)
            .orElseGet(kafkaRecord::timestamp);
    return Instant.ofEpochMilli(millis);
  }

  private static Optional<String> header(ConsumerRecord<String, byte[]> kafkaRecord, String name) {
    var header = kafkaRecord.headers().lastHeader(name);
    return header == null
        ? Optional.empty()
        : Optional.of(new String(header.value(), StandardCharsets.UTF_8));
  }
}
